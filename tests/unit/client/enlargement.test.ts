import { describe, expect, it } from 'vitest';
import { enlargementAt } from '../../../client/camera/enlargement.ts';

describe('how much larger than the section a lander is drawn', () => {
  it('is nothing near the ground', () => {
    expect([0, 0.4, 3, 7].map(enlargementAt)).toEqual([1, 1, 1, 1]);
  });

  it('grows with the height, but more slowly than that', () => {
    let before = { height: 7, times: 1 };
    for (let height = 7.1; height < 250; height += 0.1) {
      const times = enlargementAt(height);
      expect(times).toBeGreaterThan(before.times);
      expect(height / times).toBeGreaterThan(before.height / before.times);
      before = { height, times };
    }
  });

  it('begins without a kink', () => {
    const step = 1e-4;
    const slope = (enlargementAt(7 + step) - 1) / step;
    // of a kink the slope would be of the order of 1/7 per meter; this one grows from nothing
    expect(Math.abs(slope)).toBeLessThan(1e-4);
  });

  it('leaves a lander from the highest start as large as from a height that a sheet has room for', () => {
    expect(220 / enlargementAt(220)).toBeLessThan(20);
  });
});
