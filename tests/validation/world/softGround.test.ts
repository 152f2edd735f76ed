import { describe, expect, it } from 'vitest';
import type { Soil, Terrain } from '../../../engine/ground/index.ts';
import { nextUniform, seedRandom } from '../../../engine/math/random.ts';
import { arrivalCase } from '../../../engine/table/simulateArrival.ts';
import { readDescent } from '../../../engine/world/index.ts';
import { findSite } from '../../../levels/index.ts';
import { dropLander, evenGround, MOON, settle, type Drop } from '../../support/dropLander.ts';
import { shippedLander, touchDown } from '../../support/touchDown.ts';

const DUST = findSite('pinfold-plain')?.ground.soil as Extract<Soil, { kind: 'bekker' }>;

function play(drop: Drop) {
  const descent = dropLander(drop);
  settle(descent);
  return { setup: descent.setup, ...readDescent(descent) };
}

function soft(slope: number, friction: number): Terrain {
  return { ...evenGround(slope, friction), soil: DUST };
}

/** Mean depth of the soles below the ground [m]. */
function depthOf({ legs }: ReturnType<typeof play>): number {
  return -legs.reduce((sum, { footY }) => sum + footY / legs.length, 0);
}

describe('soft ground in play', () => {
  it('[LE10] lets the feet sink as deep as the pressure under their load asks for, and no deeper than the crush of the legs can press them', () => {
    const lander = shippedLander('trivet');
    const dropped = play({ lander, terrain: soft(0, 0.6), vx: 0, descentRate: 1.2, angle: 0, rate: 0 });
    const [{ footpadDiameter }] = lander.legs as [(typeof lander.legs)[0]];
    const area = (Math.PI / 4) * footpadDiameter * footpadDiameter;
    // p = (k_c / b + k_phi) z, after Bekker: force over depth of one pad [N/m]
    const perMeter = (DUST.cohesive / (footpadDiameter / 2) + DUST.frictional) * area;
    const carried = (dropped.mass * MOON) / lander.legs.length;
    expect(depthOf(dropped)).toBeGreaterThan(carried / perMeter);
    // the first stage gives way at its crush force along the leg, which the sideways stays help by less than as much again
    expect(depthOf(dropped)).toBeLessThan((2 * lander.legs[0]!.stages[0]!.force) / perMeter);
    const rigid = play({ lander, terrain: evenGround(0, 0.6), vx: 0, descentRate: 1.2, angle: 0, rate: 0 });
    // on rigid ground only the legs press together, as springs
    expect(depthOf(rigid)).toBeLessThan((1.5 * carried) / lander.legs[0]!.stiffness);
  });

  it('[LE10] ends as the simulation in six degrees of freedom, with the same crush', () => {
    const lander = shippedLander('trivet');
    const random = seedRandom(11);
    const between = (low: number, high: number): number => low + (high - low) * nextUniform(random);
    const seen = { alike: 0, bothFall: 0, bothStand: 0 };
    const differences: number[] = [];
    for (let i = 0; i < 100; i++) {
      const played = play({
        lander,
        terrain: soft(between(-0.14, 0.14), 1.1),
        vx: between(-5, 5),
        descentRate: between(0.2, 3),
        angle: between(-0.12, 0.12),
        rate: between(-0.1, 0.1),
      });
      const simulated = touchDown(arrivalCase(played.setup, played.contacts[0]!), { stopWhenDecided: false });
      const fell = played.outcome?.startsWith('tipped') === true;
      const fallsInSpace = simulated.outcome.startsWith('tipped');
      if (fell === fallsInSpace) seen.alike++;
      if (fell && fallsInSpace) seen.bothFall++;
      if (fell || fallsInSpace) continue;
      seen.bothStand++;
      const most = Math.max(...simulated.strokes);
      if (most > 0.01) differences.push(Math.abs(Math.max(...played.legs.map(({ stroke }) => stroke)) / most - 1));
    }
    const middle = differences.toSorted((a, b) => a - b)[Math.floor(differences.length / 2)]!;
    const measured = JSON.stringify({ ...seen, middle, crushed: differences.length });
    expect(seen.bothFall, measured).toBeGreaterThan(10);
    expect(seen.bothStand, measured).toBeGreaterThan(10);
    expect(seen.alike, measured).toBeGreaterThanOrEqual(98);
    expect(differences.length, measured).toBeGreaterThan(10);
    expect(middle, measured).toBeLessThan(0.001);
  }, 60_000);
});
