import { lowerFigure, lowerFigureBeside, upperFigure, upperFigureBeside } from '../../../engine/figures.ts';
import { describe, expect, it } from 'vitest';

describe('a bound in figures', () => {
  it('is rounded to its own side, also below zero', () => {
    expect([0.98999744, 0.99, 0.29, -0.0661, 1].map((value) => lowerFigure(value, 3))).toEqual([
      '0.989',
      '0.990',
      '0.290',
      '-0.067',
      '1.000',
    ]);
    expect([0.9001, 0.9, 0, -0.0669].map((value) => upperFigure(value, 3))).toEqual([
      '0.901',
      '0.900',
      '0.000',
      '-0.066',
    ]);
    expect([lowerFigure(12.5, 0), upperFigure(12.5, 0)]).toEqual(['12', '13']);
  });

  it('shows on which side of a requirement it lies, with more decimals where five do not', () => {
    expect(lowerFigureBeside(0.99, 0.9899974)).toBe('0.98999');
    expect(lowerFigureBeside(0.9999995, 0.99999957)).toBe('0.9999995');
    expect(lowerFigureBeside(0.95, 0.96)).toBe('0.96000');
    expect(upperFigureBeside(0.95, 0.9499999)).toBe('0.9499999');
    expect(upperFigureBeside(0.95, 0.95)).toBe('0.95000');
    expect(upperFigureBeside(0.95, 0.9500001)).toBe('0.95001');
  });
});
