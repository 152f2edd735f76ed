import { describe, expect, it } from 'vitest';
import type { Fault } from '../../../engine/faults/index.ts';
import { nextUniform, seedRandom } from '../../../engine/math/random.ts';
import { readDescent } from '../../../engine/world/index.ts';
import { findLander } from '../../../levels/index.ts';
import { dropLander, evenGround } from '../../support/dropLander.ts';
import { fell, playArrival, simulateFirstContact } from './playArrivals.ts';

const ARRIVALS = 24;
const SOFTNESS = 0.4;

/** Legs on the right of the section, the outermost first. */
function legsToTheRight(lander: NonNullable<ReturnType<typeof findLander>>): readonly number[] {
  const { legs } = readDescent(dropLander({ lander }));
  return legs
    .map(({ footX }, leg) => ({ footX, leg }))
    .filter(({ footX }) => footX > 1)
    .toSorted((one, other) => other.footX - one.footX)
    .map(({ leg }) => leg);
}

describe('a lander with soft legs', () => {
  it.each([
    ['trivet', 'one'],
    ['trivet', 'all'],
    ['steeple', 'one'],
    ['steeple', 'all'],
    ['bolster', 'one'],
    ['bolster', 'all'],
  ] as const)('[PL22] ends in play as it does in the simulation: %s, %s of those on one side', (id, which) => {
    const lander = findLander(id);
    if (lander === undefined) throw new Error(`no lander ${id}`);
    const right = legsToTheRight(lander);
    const faults = (which === 'one' ? right.slice(0, 1) : right).map((leg): Fault => ({
      source: 'legs',
      kind: 'legSoft',
      fromTick: 0,
      parameters: { leg, factor: SOFTNESS },
    }));
    const random = seedRandom(99);
    const between = (low: number, high: number): number => low + (high - low) * nextUniform(random);
    let alike = 0;
    let softened = 0;
    for (let arrival = 0; arrival < ARRIVALS; arrival++) {
      const drop = {
        lander,
        terrain: evenGround(between(-0.1, 0.1), 1.1),
        vx: between(-2.5, 2.5),
        descentRate: between(0.3, 2.5),
        angle: between(-0.08, 0.08),
        rate: between(-0.05, 0.05),
      };
      const played = playArrival({ ...drop, faults });
      if (fell(played) === fell(simulateFirstContact(played))) alike++;
      const leg = right[0] ?? 0;
      if ((played.legs[leg]?.stroke ?? 0) > (playArrival(drop).legs[leg]?.stroke ?? 0)) softened++;
    }
    // as the whole: 98 % and more
    expect(alike).toBeGreaterThanOrEqual(ARRIVALS - 1);
    expect(softened).toBeGreaterThan(ARRIVALS / 4);
  });
});
