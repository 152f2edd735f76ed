import { describe, expect, it } from 'vitest';
import { assessLander } from '../../../engine/structure/assessLander.ts';
import { plainLander } from '../../support/plainLander.ts';
import { plainTank } from '../../support/plainTank.ts';

const GRAVITY = 1.62422;

describe('the slowest mode of the liquid of a lander', () => {
  it('is that of the tank whose liquid is shallow over wide: w² = (ξ g/R) tanh(ξ h/R), h the filled length', () => {
    const tanks = [
      plainTank({ name: 'deep', radius: 0.5, length: 4, fill: 0.9 }),
      plainTank({ name: 'shallow', radius: 1, length: 3, fill: 0.2 }),
    ];
    // ξ = 1.841184, the first zero of J₁'; h = 3 · 0.2
    const expected = Math.sqrt(1.841184 * GRAVITY * Math.tanh(1.841184 * 0.6));
    const { liquid } = assessLander({ ...plainLander(), tanks }, { gravity: GRAVITY });
    expect(liquid.slowestMode).toBeCloseTo(expected, 6);
  });

  it('is none without liquid, which then shifts nothing', () => {
    const tanks = [plainTank({ fill: 0 })];
    const { liquid } = assessLander({ ...plainLander(), tanks }, { gravity: GRAVITY });
    expect(liquid).toEqual({ centerShift: 0, slowestMode: undefined });
  });
});
