import { describe, expect, it } from 'vitest';
import { readDescent, stepDescent, type Descent } from '../../../engine/world/index.ts';
import { advanceOnLegs } from '../../../engine/world/advanceMotion.ts';
import { findLander } from '../../../levels/index.ts';
import { COAST, dropLander, evenGround, settle } from '../../support/dropLander.ts';
import { plainLander } from '../../support/plainLander.ts';

/** Steps the legs alone on, past the outcome, for so many seconds. */
function standOn(descent: Descent, seconds: number): void {
  const { feet, motion, bulk, forces } = descent;
  for (let i = 0; i < seconds * 240; i++) advanceOnLegs(feet, motion, bulk, forces);
}

const TRIVET = findLander('trivet') ?? plainLander();

describe('a lander that stands', () => {
  it.each([
    { name: 'plain', lander: plainLander(), slopeDeg: 10 },
    { name: 'plain', lander: plainLander(), slopeDeg: -25 },
    { name: 'Trivet', lander: TRIVET, slopeDeg: 12 },
    { name: 'Trivet', lander: TRIVET, slopeDeg: -20 },
  ])('[PL7] does not creep on a slope of $slopeDeg degrees, below the friction angle of 35 ($name)', (given) => {
    const slope = (given.slopeDeg * Math.PI) / 180;
    const descent = dropLander({ lander: given.lander, terrain: evenGround(slope), angle: slope, descentRate: 0.5 });
    settle(descent);
    expect(descent.outcome).toMatch(/^upright/);
    standOn(descent, 10);
    const { x, y, angle } = descent.motion;
    standOn(descent, 100);
    expect(Math.abs(descent.motion.x - x)).toBeLessThan(1e-9);
    expect(Math.abs(descent.motion.y - y)).toBeLessThan(1e-9);
    expect(Math.abs(descent.motion.angle - angle)).toBeLessThan(1e-9);
    // and it is the ground that holds it: the feet together bear the weight, along the slope by friction
    const { forceX, forceY } = descent.feet;
    const weight = descent.bulk.mass * descent.setup.gravity;
    expect(forceY / weight).toBeCloseTo(1, 3);
    expect(Math.abs(forceX) / weight).toBeLessThan(1e-3);
  });

  it('[PL8] slides on a slope above the friction angle, as Coulomb says', () => {
    // 20 degrees, friction 0.2: a = g (sin 20° − 0.2 cos 20°); low and wide, so that it does not tip
    const slope = (-20 * Math.PI) / 180;
    const lander = plainLander({ centerHeight: 0.8, halfStance: 2, inertia: 2000 });
    const descent = dropLander({ lander, terrain: evenGround(slope, 0.2), angle: slope });
    for (let i = 0; i < 240; i++) stepDescent(descent, COAST);
    const { vx, vy, tick } = readDescent(descent);
    for (let i = 0; i < 240; i++) stepDescent(descent, COAST);
    const later = readDescent(descent);
    const gained = (later.vx - vx) * Math.cos(slope) + (later.vy - vy) * Math.sin(slope);
    const expected = 1.62422 * (Math.sin(-slope) - 0.2 * Math.cos(slope)) * ((later.tick - tick) / 60);
    expect(Math.abs(gained / expected - 1)).toBeLessThan(0.002);
  });

  it('[PL11] balanced on one foot is not at rest, and falls', () => {
    // turned over its right foot a little past balance, and a little short of it, with no thrusters, and let go
    const balance = Math.atan(1.5 / 2);
    const plain = plainLander();
    const lander = { ...plain, engine: { ...plain.engine, attitudeTorque: 1e-6 } };
    const descent = dropLander({ lander, terrain: evenGround(0, 5), angle: -(balance + 0.003) });
    settle(descent);
    expect(descent.outcome).toBe('tipped downhill');
    const short = dropLander({ lander, terrain: evenGround(0, 5), angle: -(balance - 0.003) });
    settle(short);
    expect(short.outcome).toMatch(/^upright/);
  });

  it('[PL5] sinks onto its legs by its weight alone without crushing them', () => {
    const descent = dropLander({ lander: plainLander() });
    settle(descent);
    const { y, legs } = readDescent(descent);
    // m g over four legs of 2 MN/m: 0.4 mm
    expect(2 - y).toBeCloseTo((2000 * 1.62422) / 8e6, 5);
    expect(legs.map(({ stroke }) => stroke)).toEqual([0, 0, 0, 0]);
    expect(legs[0]?.load).toBeCloseTo((2000 * 1.62422) / 4, 0);
  });
});
