import { describe, expect, it } from 'vitest';
import { tradeSteps, tradeTable, type StudyCase, type Trade } from '../../../engine/study/index.ts';
import { findLander } from '../../../levels/index.ts';

const ASKED: StudyCase = {
  lander: findLander('trivet')!,
  gravity: 1.622,
  slopeDeg: 0,
  descentRate: 1,
  horizontalSpeed: 0.5,
  friction: 0.8,
  missing: [],
};

describe('the values of a trade', () => {
  it('are those given and the present one, rising, each once', () => {
    expect(tradeSteps(ASKED, 'legCount', [6, 3, 4, 6])).toEqual([
      { value: 3, shape: { legCount: 3 } },
      { value: 4, shape: {} },
      { value: 6, shape: { legCount: 6 } },
    ]);
  });

  it('run from 70 to 130 % of the present one where none are given', () => {
    const values = tradeSteps(ASKED, 'footRadius').map(({ value }) => value);
    // Trivet's feet stand at 2.14 m
    expect(values[0]).toBeCloseTo(0.7 * 2.14, 3);
    expect(values.at(-1)).toBeCloseTo(1.3 * 2.14, 3);
    expect(values).toHaveLength(7);
  });

  it('stand in a table with their unit, a row each, the present one marked', () => {
    const point = { shape: {}, mass: 10, tip: 2, gear: undefined, limit: 2, margin: 1.5, note: undefined };
    const trade: Trade = {
      field: 'stroke',
      present: 0.4,
      points: [
        { ...point, value: 0.4 },
        { ...point, value: 0.5, mass: 14, limit: 3, margin: 2.5 },
      ],
    };
    const { names, rows } = tradeTable([trade]);
    // 1 m/s more for 4 kg is a quarter of a meter a second for each
    expect(rows).toEqual([
      ['stroke', 'm', 0.4, true, 10, 2, undefined, 2, 1.5, 0, 0, undefined, undefined],
      ['stroke', 'm', 0.5, false, 14, 2, undefined, 3, 2.5, 1, 4, 0.25, undefined],
    ]);
    expect(names).toHaveLength(rows[0]!.length);
  });
});
