import { describe, expect, it } from 'vitest';
import { massProperties } from '../../../engine/lander/index.ts';
import { tradeOf, tradePoint, whatBuysMost, type StudyCase, type Trade } from '../../../engine/study/index.ts';
import { findLander } from '../../../levels/index.ts';

const TRIVET = findLander('trivet')!;
const ASKED: StudyCase = {
  lander: TRIVET,
  gravity: 1.622,
  slopeDeg: 5,
  descentRate: 1.5,
  horizontalSpeed: -0.5,
  friction: 0.8,
  missing: [],
};

const point = (value: number, limit: number | undefined, mass: number | undefined) => ({
  value,
  shape: {},
  tip: limit,
  limit,
  mass,
  gear: undefined,
  margin: undefined,
  note: undefined,
});

describe('a trade', () => {
  it('[SY4] names the largest gain of each dimension, the largest of all first, and none where there is none', () => {
    const trades: Trade[] = [
      { field: 'mass', present: 10, points: [point(9, 1.9, 90), point(10, 2, 100), point(11, 1.5, 110)] },
      { field: 'footRadius', present: 2, points: [point(2, 2, 100), point(3, 2.6, 130), point(4, 2.4, 160)] },
      { field: 'stroke', present: 1, points: [point(1, 2, 100), point(2, 2.8, 100), point(3, undefined, undefined)] },
    ];
    expect(whatBuysMost(trades)).toEqual([
      { field: 'stroke', value: 2, gain: expect.closeTo(0.8, 12) as number, added: 0, perKilogram: undefined },
      {
        field: 'footRadius',
        value: 3,
        gain: expect.closeTo(0.6, 12) as number,
        added: 30,
        perKilogram: expect.closeTo(0.02, 12) as number,
      },
    ]);
  });

  it('has its margin from the speed of the arrival whichever way that goes', () => {
    const found = tradePoint(ASKED, {});
    expect(found.tip).toBeGreaterThan(0);
    expect(found.limit).toBe(Math.min(found.tip!, found.gear ?? Infinity));
    expect(found.margin).toBe(found.limit! - 0.5);
  });

  it('says in words why there is no lander at a point', () => {
    expect(tradePoint(ASKED, { mass: 100 })).toMatchObject({
      tip: undefined,
      limit: undefined,
      note: expect.stringMatching(/^mass: expected/) as string,
    });
  });

  it('has one more point with each step, from the least value on', () => {
    const steps = tradeOf(ASKED, 'legCount');
    const first = steps.next().value as Trade;
    expect(first).toMatchObject({ field: 'legCount', present: 4, points: [{ value: 3, shape: { legCount: 3 } }] });
    // three legs weigh three quarters of four
    expect(first.points[0]?.mass).toBeCloseTo(massProperties(TRIVET).mass - 180 / 4, 9);
  });
});
