import { describe, expect, it } from 'vitest';
import { tripLimit } from '../../../engine/pivot/index.ts';
import { CAUGHT, caughtLimit } from '../../support/caughtFoot.ts';
import { MOON } from '../../support/touchDown.ts';

/**
 * The plastic trip limit is what the simulation must become when the legs turn stiff, contact turns plastic (over-damped) and friction
 * holds whatever comes. Table of the convergence: engine/touchdown/CONVERGENCE.md.
 */
describe('trip limit of a body on stiff legs', () => {
  // physics.md: 1.7740 level, 1.5401 at 5 deg, 1.3984 at 8 deg, 1.2080 at 12 deg downhill
  it.each([
    [0, 1.774],
    [5, 1.5401],
    [8, 1.3984],
    [12, 1.208],
  ])('is the plastic limit at %i deg downhill, %f m/s', (slopeDeg, expected) => {
    const limit = caughtLimit({ stiffness: 1e7, friction: 10, slope: (slopeDeg * Math.PI) / 180 });
    // achieved: 2e-3 at most
    expect(Math.abs(limit / expected - 1)).toBeLessThan(3e-3);
  });

  it('agrees with the closed form of this engine', () => {
    const closed = tripLimit(CAUGHT, { gravity: MOON, slope: 0.1 });
    const expected = closed.kind === 'limit' ? closed.plastic.alongGround : Number.NaN;
    const limit = caughtLimit({ stiffness: 1e7, friction: 10, slope: 0.1 });
    expect(Math.abs(limit / expected - 1)).toBeLessThan(3e-3);
  });

  it('comes nearer as the legs stiffen', () => {
    const [soft, stiff] = [3e4, 3e6].map((stiffness) => Math.abs(caughtLimit({ stiffness, friction: 10 }) / 1.774 - 1));
    // achieved: 1.1e-2 and 1.2e-3
    expect(soft!).toBeLessThan(0.02);
    expect(stiff!).toBeLessThan(soft! / 4);
  });

  it('comes down to the plastic limit as friction grows, and does not exist below b / h = 0.75', () => {
    const limits = [0.8, 1, 1.5, 10].map((friction) => caughtLimit({ stiffness: 3e6, friction }));
    expect(limits[0]!).toBeGreaterThan(limits[1]!);
    expect(limits[1]!).toBeGreaterThan(limits[2]!);
    expect(limits[2]! / 1.774).toBeLessThan(1.02);
    expect(() => caughtLimit({ stiffness: 3e6, friction: 0.74 })).toThrow('stays up at the high end');
  });
});
