import { assert, constantFrom, double, oneof, property, tuple } from 'fast-check';
import { describe, expect, it } from 'vitest';
import { rotate, type Quaternion } from '../../../engine/math/quaternion.ts';
import { attitudeOf, anglesOf, quaternionOf } from '../../../engine/touchdown/attitude.ts';

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

describe('the quaternion of a frame', () => {
  it('is the turn that laid the frame there, for any turn, half turns about each axis among them', () => {
    const part = oneof(double({ min: -1, max: 1, noNaN: true }), constantFrom(0, 1e-9, -1e-9));
    const parts = tuple(part, part, part, part).filter((all) => Math.hypot(...all) > 1e-3);
    assert(
      property(parts, (all) => {
        const length = Math.hypot(...all);
        const q: Quaternion = [all[0] / length, all[1] / length, all[2] / length, all[3] / length];
        const found = quaternionOf(rotate(q, [1, 0, 0]), rotate(q, [0, 1, 0]), rotate(q, [0, 0, 1]));
        const agreement = Math.abs(q.reduce((sum, one, i) => sum + one * found[i]!, 0));
        expect(Math.abs(agreement - 1)).toBeLessThan(1e-14);
        expect(Math.abs(Math.hypot(...found) - 1)).toBeLessThan(1e-14);
      }),
      { seed: 2, numRuns: 1000 },
    );
  });
});
