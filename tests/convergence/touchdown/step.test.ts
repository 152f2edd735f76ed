import { describe, expect, it } from 'vitest';
import { arrivalStudy, dropStudy } from './stepStudy.ts';

describe('[TD10] the step', () => {
  it('has order 2 in the stroke of a damped drop, wherever in a step the pads meet the ground', () => {
    // achieved ratios 4.0, 4.1, 4.3 from the surface; within a step the error is below 5e-6 at once
    const rows = dropStudy([1 / 512, 1 / 1024, 1 / 2048]);
    const [a, b, c] = rows.map((row) => row.values[1]!);
    expect(a! / b!).toBeGreaterThan(3.5);
    expect(b! / c!).toBeGreaterThan(3.5);
    for (const row of rows) expect(row.values[3]!).toBeLessThan(1e-5);
  });

  it('has order 2 in the stroke of an undamped drop against the energy balance', () => {
    const [coarse, fine] = dropStudy([1 / 512, 1 / 4096]).map((row) => row.values);
    // eight times finer: 64 times better at order 2; the kinks of the law scatter single steps
    expect(coarse![0]! / fine![0]!).toBeGreaterThan(30);
    expect(coarse![2]! / fine![2]!).toBeGreaterThan(30);
    expect(coarse![0]!).toBeLessThan(0.005);
  });

  it('of default size gives the outcomes of one four times finer, and its strokes to half a percent', () => {
    const [coarse, fine] = arrivalStudy('trivet', 30, [1 / 512, 1 / 1024], 1 / 2048);
    expect(coarse!.otherOutcome).toBeLessThanOrEqual(1);
    expect(coarse!.strokeError).toBeLessThan(0.005);
    expect(coarse!.marginError).toBeLessThan(0.005);
    expect(fine!.strokeError).toBeLessThan(coarse!.strokeError / 2);
  });
});
