import { describe, expect, it } from 'vitest';
import { shownHeight } from '../../../client/camera/heightBreak.ts';

describe('the broken-out height', () => {
  it('is the height itself near the ground', () => {
    expect([0, 0.4, 3, 7].map(shownHeight)).toEqual([0, 0.4, 3, 7]);
  });

  it('grows with the height and stays below it', () => {
    let before = shownHeight(7);
    for (let height = 7.1; height < 200; height += 0.1) {
      const shown = shownHeight(height);
      expect(shown).toBeGreaterThan(before);
      expect(shown).toBeLessThan(height);
      before = shown;
    }
  });

  it('has no step in speed where the break opens', () => {
    const step = 1e-6;
    const below = (shownHeight(7) - shownHeight(7 - step)) / step;
    const above = (shownHeight(7 + step) - shownHeight(7)) / step;
    expect(above / below).toBeCloseTo(1, 5);
  });

  it('leaves room on the sheet for a lander from the highest start', () => {
    expect(shownHeight(120)).toBeLessThan(20);
  });
});
