import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { stepSwing, swingSize } from '../../../engine/slosh/index.ts';

const real = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const swings = fc.record({ angle: real(-0.3, 0.3), rate: real(-1, 1) });
const pendulums = fc.record({ length: real(0.05, 3), hingeAbove: real(-3, 3), damping: real(0, 0.9) });
const motions = fc.record({ across: real(-1, 1), along: real(0.2, 20), rateChange: real(-0.2, 0.2) });
const spans = real(1e-3, 5);

// a fixed seed: the same cases every time
const RUNS = { seed: 610, numRuns: 300 };

describe('the swing of a liquid', () => {
  it('[SL11] seen in a mirror is the swing of the mirrored motion, to the bit', () => {
    fc.assert(
      fc.property(swings, pendulums, motions, spans, (swing, pendulum, felt, span) => {
        const one = stepSwing(swing, pendulum, felt, span);
        const mirrored = { ...felt, across: -felt.across, rateChange: -felt.rateChange };
        const other = stepSwing({ angle: -swing.angle, rate: -swing.rate }, pendulum, mirrored, span);
        expect([0 - other.angle, 0 - other.rate]).toEqual([0 + one.angle, 0 + one.rate]);
      }),
      RUNS,
    );
  });

  it('[SL11] left alone never grows, and goes in two steps as in one', () => {
    fc.assert(
      fc.property(swings, pendulums, motions, spans, (swing, pendulum, felt, span) => {
        const alone = { ...felt, rateChange: 0 };
        const sizeOf = (each: typeof swing) => swingSize(each, pendulum.length, alone);
        const once = stepSwing(swing, pendulum, alone, span);
        expect(sizeOf(once)).toBeLessThanOrEqual(sizeOf(swing) * (1 + 1e-12) + 1e-15);
        const half = stepSwing(swing, pendulum, alone, span / 2);
        const twice = stepSwing(half, pendulum, alone, span / 2);
        expect(Math.abs(twice.angle - once.angle)).toBeLessThan(1e-9 * (1 + sizeOf(swing)));
      }),
      RUNS,
    );
  });
});
