import { assert, constantFrom, double, oneof, property } from 'fast-check';
import { describe, expect, it } from 'vitest';
import { attitudeOf, anglesOf } from '../../../engine/touchdown/attitude.ts';

const turn = double({ min: -Math.PI, max: Math.PI, noNaN: true });
const lean = oneof(
  double({ min: -Math.PI / 2, max: Math.PI / 2, noNaN: true }),
  constantFrom(-Math.PI / 2, Math.PI / 2),
);

describe('yaw, pitch and roll of an attitude', () => {
  it('give that attitude again', () => {
    assert(
      property(turn, lean, turn, (yaw, pitch, roll) => {
        const attitude = attitudeOf(yaw, pitch, roll);
        const found = anglesOf(attitude);
        const again = attitudeOf(found.yaw, found.pitch, found.roll);
        // q and -q are one attitude
        const agreement = Math.abs(attitude.reduce((sum, part, i) => sum + part * again[i]!, 0));
        expect(1 - agreement).toBeLessThan(1e-15);
      }),
      { seed: 1, numRuns: 2000 },
    );
  });

  it('are the angles that it was made from, short of the horizon', () => {
    const almost = double({ min: -1.5, max: 1.5, noNaN: true });
    assert(
      property(almost, almost, almost, (yaw, pitch, roll) => {
        const found = anglesOf(attitudeOf(yaw, pitch, roll));
        expect(found.yaw).toBeCloseTo(yaw, 11);
        expect(found.pitch).toBeCloseTo(pitch, 11);
        expect(found.roll).toBeCloseTo(roll, 11);
      }),
      { seed: 1, numRuns: 2000 },
    );
  });
});
