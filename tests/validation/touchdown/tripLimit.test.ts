import { describe, expect, it } from 'vitest';
import { tripLimit } from '../../../engine/pivot/index.ts';
import { prepareTouchdown, runTouchdown } from '../../../engine/touchdown/index.ts';
import { ringLander } from '../../support/ringLander.ts';
import { bisectLimit } from '../../support/bisectLimit.ts';
import { MOON, plane } from '../../support/touchDown.ts';

/**
 * The plastic trip limit is what the simulation must become when the legs turn stiff, contact turns plastic (over-damped) and friction
 * holds whatever comes: a square body, half stance 1.5 m, center of mass at 2 m, inertia 1.5 m^2 times mass, sliding flat along the ground.
 */
const HALF_STANCE = 1.5;
const MASS = 2000;

function simulatedLimit(stiffness: number, friction: number, slope: number): number {
  const inertia = 1.5 * MASS;
  const lander = ringLander({
    mass: MASS,
    inertia: [inertia, inertia, inertia],
    centerHeight: 2,
    legCount: 4,
    radius: HALF_STANCE * Math.SQRT2,
    firstAzimuth: Math.PI / 4,
    crushForce: 1e15,
    stiffness,
    bottomedStiffness: stiffness,
  });
  const prepared = prepareTouchdown(lander);
  if (!prepared.ok) throw new Error(JSON.stringify(prepared.error));
  const falls = (alongGround: number): boolean => {
    const state = {
      horizontalSpeed: alongGround * Math.cos(slope),
      descentRate: alongGround * Math.sin(slope),
      pitch: slope,
    };
    const result = runTouchdown(
      prepared.value,
      { gravity: MOON, ground: plane(friction, slope), state },
      { damping: 2 },
    );
    return result.outcome === 'tipped downhill';
  };
  return bisectLimit(1, 3, 12, falls);
}

describe('trip limit of a body on stiff legs', () => {
  // physics.md: 1.7740 level, 1.5401 at 5 deg, 1.3984 at 8 deg, 1.2080 at 12 deg downhill
  it.each([
    [0, 1.774],
    [5, 1.5401],
    [8, 1.3984],
    [12, 1.208],
  ])('is the plastic limit at %i deg downhill, %f m/s', (slopeDeg, expected) => {
    // achieved: 2e-3 at most
    expect(Math.abs(simulatedLimit(1e7, 10, (slopeDeg * Math.PI) / 180) / expected - 1)).toBeLessThan(3e-3);
  });

  it('agrees with the closed form of this engine', () => {
    const body = { mass: MASS, halfStance: HALF_STANCE, centerHeight: 2, inertia: 1.5 * MASS };
    const limit = tripLimit(body, { gravity: MOON, slope: 0.1 });
    if (limit.kind !== 'limit') throw new Error('stands');
    expect(Math.abs(simulatedLimit(1e7, 10, 0.1) / limit.plastic.alongGround - 1)).toBeLessThan(3e-3);
  });

  it('comes nearer as the legs stiffen', () => {
    const misses = [3e4, 3e5, 3e6].map((stiffness) => Math.abs(simulatedLimit(stiffness, 10, 0) / 1.774 - 1));
    // achieved: see CONVERGENCE.md; the last is within the bisection and the remaining bounce
    expect(misses[0]!).toBeLessThan(0.05);
    expect(misses[1]!).toBeLessThan(misses[0]!);
    expect(misses[2]!).toBeLessThan(2e-3);
  });

  it('comes down to the plastic limit as friction grows, and does not exist below b / h = 0.75', () => {
    const limits = [0.8, 1, 1.5, 10].map((friction) => simulatedLimit(3e6, friction, 0));
    expect(limits[0]!).toBeGreaterThan(limits[1]!);
    expect(limits[1]!).toBeGreaterThan(limits[2]!);
    expect(limits[2]! / 1.774).toBeLessThan(1.02);
    expect(() => simulatedLimit(3e6, 0.74, 0)).toThrow('stays up at the high end');
  });
});
