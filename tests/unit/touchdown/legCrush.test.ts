import { describe, expect, it } from 'vitest';
import {
  crushedAfter,
  elasticForce,
  stageAt,
  totalStroke,
  yieldForce,
  type CrushLaw,
} from '../../../engine/touchdown/legCrush.ts';

const LAW: CrushLaw = {
  stages: [
    { force: 10_000, stroke: 0.2 },
    { force: 16_000, stroke: 0.1 },
  ],
  stiffness: 1e6,
  bottomedStiffness: 4e6,
};
const TOTAL = totalStroke(LAW);

describe('the leg law', () => {
  it('[LG1] crushes no further while the load stays below the force of the stage', () => {
    expect(crushedAfter(LAW, 0, 9999, 1e6)).toBe(0);
    expect(crushedAfter(LAW, 0.05, 10_000, 1e6)).toBe(0.05);
    expect(crushedAfter(LAW, 0.25, 16_000, 1e6)).toBe(0.25);
  });

  it('[LG1] returns the load to the force of the stage by shortening', () => {
    // 13 kN against 10 kN at 1 MN/m: 3 mm
    expect(crushedAfter(LAW, 0, 13_000, 1e6)).toBeCloseTo(0.003, 12);
  });

  it('[LG2] goes on into the next stage when one is used up within a step', () => {
    // 1 mm left at 10 kN; the load falls from 40 to 39 kN over it and then by 23 kN more to 16 kN
    const crushed = crushedAfter(LAW, 0.199, 40_000, 1e6);
    expect(crushed).toBeCloseTo(0.2 + 0.023, 12);
    expect(yieldForce(LAW, crushed)).toBe(16_000);
  });

  it('[LG2] waits at the end of a stage until the load reaches the next', () => {
    // 12 kN: past the first stage's end, below the second's force
    expect(crushedAfter(LAW, 0.1999, 12_000, 1e6)).toBe(0.2);
    expect(stageAt(LAW, 0.2)).toBe(1);
  });

  it('[LG3] is used up exactly at the total stroke, and then bears any load', () => {
    expect(crushedAfter(LAW, 0.29, 1e6, 1e6)).toBe(TOTAL);
    expect(stageAt(LAW, TOTAL)).toBe(2);
    expect(yieldForce(LAW, TOTAL)).toBe(Infinity);
    expect(crushedAfter(LAW, TOTAL, 1e9, 1e6)).toBe(TOTAL);
  });

  it('[LG4] is elastic on one line up and down, stiffer beyond the last force once used up', () => {
    expect(elasticForce(LAW, false, 0.005)).toBe(5000);
    expect(elasticForce(LAW, false, -0.01)).toBe(0);
    expect(elasticForce(LAW, true, 0.016)).toBe(16_000);
    expect(elasticForce(LAW, true, 0.017)).toBeCloseTo(20_000, 6);
  });

  it('[LG5] dissipates exactly force times stroke over a quasi-static crush through both stages', () => {
    // press the leg slowly to 0.35 m and let it go: work done = 10 kN x 0.2 m + 16 kN x 0.1 m + what the springs give back
    let crushed = 0;
    let work = 0;
    const step = 1e-5;
    const forceAt = (compression: number) => {
      const trial = elasticForce(LAW, stageAt(LAW, crushed) === 2, compression - crushed);
      crushed = crushedAfter(LAW, crushed, trial, LAW.stiffness);
      return elasticForce(LAW, stageAt(LAW, crushed) === 2, compression - crushed);
    };
    for (let i = 0; i < 35_000; i++) work += forceAt((i + 0.5) * step) * step;
    for (let i = 35_000; i > 0; i--) work -= forceAt((i - 0.5) * step) * step;
    expect(crushed).toBe(TOTAL);
    expect(work).toBeCloseTo(10_000 * 0.2 + 16_000 * 0.1, 0);
  });
});
