import { describe, expect, it } from 'vitest';
import { lagStep, massLeft } from '../../../engine/descent/thrust.ts';
import { STANDARD_GRAVITY } from '../../../engine/constants.ts';

describe('the lag of an engine', () => {
  it('[PL4] leaves 1/e of the way after one lag, and on average (1 - 1/e) of it', () => {
    // solution of τ dT/dt = C − T and its mean over one τ
    expect(lagStep(0.3, 0.3).left).toBeCloseTo(Math.exp(-1), 14);
    expect(lagStep(0.3, 0.3).meanLeft).toBeCloseTo(1 - Math.exp(-1), 14);
  });

  it('[PL4] over two half steps is that over the whole', () => {
    for (const lag of [0.05, 0.3, 4]) {
      const [half, whole] = [lagStep(lag, 0.1), lagStep(lag, 0.2)];
      expect(half.left * half.left).toBeCloseTo(whole.left, 14);
      expect((half.meanLeft + half.left * half.meanLeft) / 2).toBeCloseTo(whole.meanLeft, 14);
    }
  });

  it('[PL4] is none where the lag is 0', () => {
    expect(lagStep(0, 0.1)).toEqual({ left: 0, meanLeft: 0 });
  });
});

describe('the rocket equation', () => {
  it('[PL4] leaves half the mass after Isp g0 ln 2', () => {
    expect(massLeft(311 * STANDARD_GRAVITY * Math.LN2, 311)).toBeCloseTo(0.5, 14);
  });
});
