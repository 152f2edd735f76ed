import { describe, expect, it } from 'vitest';
import {
  bestOfGrid,
  enterPoint,
  gridDrawing,
  gridLines,
  gridTable,
  planGrid,
  tradeGridOf,
  type TradeGrid,
  type TradePoint,
} from '../../../engine/study/index.ts';
import { studiedCase } from '../../support/studiedCase.ts';

const ASKED = studiedCase({ slopeDeg: 3 });

const AXES = { vary: 'mass', against: 'footRadius', values: [1400, 1600], againstValues: [1, 1.2] } as const;

const point = (limit: number | undefined, mass: number | undefined): TradePoint => ({
  shape: {},
  mass,
  tip: limit,
  gear: undefined,
  limit,
  margin: limit === undefined ? undefined : limit - 0.5,
  note: undefined,
});

/** Three by three, the lander as it is at the least of both; limits and masses by row, from the first. */
function filled(rows: readonly (readonly TradePoint[])[]): TradeGrid {
  const { grid } = planGrid(ASKED, { ...AXES, values: [1600, 1700], againstValues: [1, 1.2] });
  return { ...grid, points: rows };
}

const shapes = (axes: Parameters<typeof planGrid>[1]) =>
  planGrid(ASKED, axes).places.map(({ shape }) => JSON.stringify(shape));

const strikes = (markup: string) => markup.match(/stroke-dasharray="7 4"/g)?.length ?? 0;

describe('a grid of trades', () => {
  it('looks at the lander as it is first, then at the ends and the middle of both, then between, each pair once', () => {
    const { grid, places } = planGrid(ASKED, { vary: 'mass', against: 'stroke' });
    expect(places).toHaveLength(49);
    expect(new Set(places.map(({ row, column }) => `${row} ${column}`)).size).toBe(49);
    expect(places[0]).toEqual({ row: 3, column: 3, shape: {} });
    const coarse = places.slice(1, 9).map(({ row, column }) => [row, column]);
    for (const [row, column] of coarse) expect([row! % 3, column! % 3]).toEqual([0, 0]);
    expect(grid.points.flat().every((one) => one === undefined)).toBe(true);
  });

  it('changes both in the one order, whichever is named first', () => {
    const swapped = { vary: AXES.against, against: AXES.vary, values: AXES.againstValues, againstValues: AXES.values };
    expect(new Set(shapes(AXES))).toEqual(new Set(shapes(swapped)));
  });

  it('has one more point with each step, the lander as it is first', () => {
    const { points, values, againstValues } = tradeGridOf(ASKED, { ...AXES, values: [1400] }).next().value as TradeGrid;
    const now = points[againstValues.indexOf(0.6 * Math.SQRT2)]?.[values.indexOf(1500)];
    expect(now).toMatchObject({ shape: {}, mass: expect.closeTo(1500, 9) as number });
    expect(points.flat().filter((one) => one !== undefined)).toEqual([now]);
  });

  it('[SY4] names the highest limit, the lighter of two, and the most gain for each kilogram', () => {
    const grid = filled([
      [point(1, 1500), point(1.2, 1600), point(2, 1700)],
      [point(1.5, 1600), point(2, 1650), point(0.9, 1700)],
      [point(undefined, 1600), point(undefined, undefined), point(1.1, 1750)],
    ]);
    const { most, cheapest } = bestOfGrid(grid);
    // 2 m/s twice, of which 1650 kg is the lighter; 1 m/s over 150 kg is more for each than 0.5 over 100
    expect(most).toMatchObject({ value: 1600, second: 1, point: { limit: 2, mass: 1650 } });
    expect(cheapest?.gain).toEqual({ gain: 1, added: 150, perKilogram: 1 / 150 });
    expect(gridLines(grid).join(' ')).toContain('gains 1.00 m/s for 150 kg, 6.67 mm/s for each kilogram');
    const { names, rows } = gridTable(grid);
    expect(rows).toHaveLength(9);
    const [gain, each] = [names.indexOf('gain'), names.indexOf('gainPerKilogram')];
    expect(rows.map((row) => row[gain])).toEqual([
      0,
      expect.closeTo(0.2),
      1,
      0.5,
      1,
      expect.closeTo(-0.1),
      undefined,
      undefined,
      expect.closeTo(0.1),
    ]);
    // nothing is added to the lander as it is, so there is no gain for a kilogram of it
    expect(rows[0]?.[each]).toBeUndefined();
  });

  it('draws a cell for each pair, those below the speed of the arrival struck through', () => {
    const { grid, places } = planGrid(ASKED, { ...AXES, values: [1600], againstValues: [1] });
    const known = enterPoint(enterPoint(grid, places[0]!, point(2, 1500)), places[1]!, point(0.3, 1510));
    const { markup } = gridDrawing(known, -0.5);
    expect([...markup.matchAll(/>(\d\.\d\d)<\/text>/g)].map((match) => match[1])).toEqual(['2.00', '0.30']);
    expect(strikes(markup)).toBe(1);
    expect(strikes(gridDrawing(known, 0.2).markup)).toBe(0);
  });
});
