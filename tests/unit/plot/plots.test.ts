import { describe, expect, it } from 'vitest';
import { CAUTION } from '../../../engine/constants.ts';
import {
  barPlot,
  cellPlot,
  INKS,
  inlineSvg,
  landerPlot,
  linePlot,
  planePlot,
  polarPlot,
  standaloneSvg,
  withKey,
  type Plot,
} from '../../../engine/plot/index.ts';
import { findLander } from '../../../levels/index.ts';
import { plainLander } from '../../support/plainLander.ts';
import { readSource } from '../../support/sources.ts';

const around = Array.from({ length: 24 }, (_, i) => ({
  azimuthDeg: 15 * i,
  value: i % 7 === 0 ? undefined : 1 + i / 10,
}));

const PLOTS: Readonly<Record<string, () => Plot>> = {
  polar: () =>
    polarPlot({
      label: 'A "round" of <limits> & more',
      unit: 'm/s',
      series: [
        { name: 'a', stroke: { ink: 'ink' }, points: around, closed: true },
        { name: 'b', stroke: { ink: 'pencil', dash: 'dashed' }, points: around.slice(0, 3), closed: false },
      ],
      feet: [{ azimuthDeg: 45, missing: true }],
      ring: { value: 0.6, words: 'arrival' },
    }),
  plane: () =>
    planePlot({
      label: 'plane',
      x: { from: -4, to: 4, count: 5, name: 'x' },
      y: { from: 0, to: 4, count: 3, name: 'y' },
      cells: Array.from({ length: 15 }, (_, i) => (['clear', 'rising', 'unknown'] as const)[i % 3]!),
      lines: [
        [
          { x: 0, y: 0 },
          { x: 1, y: 3 },
        ],
      ],
      point: { x: 3, y: 2, words: 'here' },
    }),
  line: () =>
    linePlot({
      label: 'line',
      x: 'x',
      y: 'y',
      series: [
        { name: 'a', stroke: { ink: 'ink' }, dotted: true, points: around.map(({ value }, x) => ({ x, y: value })) },
      ],
      level: { y: -1, words: 'level' },
    }),
  'one value': () =>
    linePlot({
      label: 'one',
      x: 'x',
      y: 'y',
      series: [{ name: 'a', stroke: { ink: 'ink' }, points: [{ x: 3, y: 0 }] }],
    }),
  'no value yet': () =>
    linePlot({
      label: 'none',
      x: 'x',
      y: 'y',
      series: [{ name: 'a', stroke: { ink: 'ink' }, points: [] }],
    }),
  bars: () =>
    barPlot({
      label: 'bars',
      axis: 'm',
      bars: [
        { name: 'a', value: 2, tick: 1, note: '2' },
        { name: 'b', value: undefined, note: 'none' },
        { name: 'c', value: -1, note: '-1' },
        { name: 'd', value: 1, open: -3, note: '1, -3' },
        { name: 'e', value: undefined, open: null, note: 'none' },
      ],
    }),
  cells: () =>
    cellPlot({
      label: 'cells',
      x: { name: 'x', ticks: ['1', '2', '3'], present: 1 },
      y: { name: 'y <m>', ticks: ['4', '5'], present: 0 },
      cells: [
        [{ value: 1, text: '1.00', under: '9 kg', isStruck: true }, { value: 2, text: '2.00' }, undefined],
        [{ value: undefined, text: 'none' }, undefined, { value: 1.5, text: '1.50', under: '8 kg' }],
      ],
    }),
  'one cell': () =>
    cellPlot({
      label: 'one',
      x: { name: 'x', ticks: ['1'], present: 0 },
      y: { name: 'y', ticks: ['1'], present: 0 },
      cells: [[undefined]],
    }),
  'with a key': () =>
    withKey(barPlot({ label: 'bars', axis: 'm', bars: [{ name: 'a', value: 1, note: '' }], nameRoom: 200 }), [
      { name: 'a "long" name of a <curve> & more, which takes half a row', mark: { ink: 'ink', dash: 'dashed' } },
      { name: 'another one that does not fit beside it on the same row', mark: 'rising' },
      { name: 'clear', mark: 'clear' },
    ]),
  trivet: () => landerPlot({ lander: findLander('trivet')!, missing: [1], label: 'Trivet' }),
  steeple: () => landerPlot({ lander: findLander('steeple')!, missing: [], label: 'Steeple' }),
  bolster: () => landerPlot({ lander: findLander('bolster')!, missing: [], label: 'Bolster' }),
  'all zero': () => barPlot({ label: 'zero', axis: 'm', bars: [{ name: 'a', value: 0, note: '' }] }),
};

/** Opened and closed in order, with quoted attributes. */
function isWellFormed(svg: string): boolean {
  const open: string[] = [];
  const rest = svg.replace(
    /<(\/?)([a-zA-Z]+)((?:\s[\w:-]+="[^"<]*")*)\s*(\/?)>/g,
    (_, close: string, name: string, _attributes, alone: string) => {
      if (close === '/') {
        if (open.pop() !== name) open.push('unmatched');
      } else if (alone === '') open.push(name);
      return '';
    },
  );
  return open.length === 0 && !/[<>]/.test(rest);
}

describe('plots', () => {
  it('are checked for form by something that can fail', () => {
    expect(isWellFormed('<svg a="1"><g></svg>')).toBe(false);
    expect(isWellFormed('<svg a="1"><g/>x</svg>')).toBe(true);
  });

  it.each(Object.entries(PLOTS))(
    '[PT1] are the same well-formed text each time, with finite numbers alone: %s',
    (_, make) => {
      const svg = inlineSvg(make());
      expect(inlineSvg(make())).toBe(svg);
      expect(svg).not.toMatch(/NaN|Infinity|undefined/);
      expect(isWellFormed(svg)).toBe(true);
    },
  );

  it.each(Object.entries(PLOTS))('[PT1] stand alone with the caution and their own inks: %s', (_, make) => {
    const file = standaloneSvg(make(), ['Trivet on the Moon']);
    expect(file).toContain(CAUTION);
    expect(file).toContain('Trivet on the Moon');
    expect(file).not.toContain('var(');
    expect(isWellFormed(file.trim())).toBe(true);
  });

  it('are drawn in the inks of the palette', () => {
    const palette = readSource('client/styles/palette.css');
    for (const [name, color] of Object.entries(INKS)) expect(palette).toContain(`--${name}: ${color};`);
  });

  it('put a value where its axis says', () => {
    const { markup } = linePlot({
      label: '',
      x: 'x',
      y: 'y',
      series: [
        {
          name: 'a',
          stroke: { ink: 'ink' },
          points: [
            { x: 0, y: 0 },
            { x: 10, y: 5 },
          ],
        },
      ],
    });
    // the field runs from 62 to 548 across and from 204 up to 16, where the axis ends at 6: 204 - 188 * 5 / 6
    expect(markup).toContain('M62 204L548 47.33');
  });

  it('draw a lander to one scale, with its dimensions in words', () => {
    const { markup } = landerPlot({
      lander: plainLander({ halfStance: 1.5, centerHeight: 2 }),
      missing: [],
      label: '',
    });
    const dimension = /M([\d.]+) ([\d.]+)L([\d.]+) ([\d.]+)" fill="none" stroke="var\(--blue\)" stroke-width="0.9"/g;
    const lines = [...markup.matchAll(dimension)].map((found) => found.slice(1).map(Number));
    const across = Math.max(...lines.map(([fromX, , toX]) => Math.abs(toX! - fromX!)));
    const up = Math.max(...lines.map(([, fromY, , toY]) => Math.abs(toY! - fromY!)));
    // in this order: the hull, the center of mass, the width over the footpads
    const [height, center, width] = [...markup.matchAll(/>([\d.]+) m/g)].map((match) => Number(match[1]));
    expect(center).toBe(2);
    expect(across / width!).toBeCloseTo(up / height!, 1);
    expect(markup).toContain('half stance 1.50 m');
  });

  it('grow by as many rows as their key needs', () => {
    const plot = barPlot({ label: '', axis: '', bars: [] });
    const name = 'x'.repeat(60);
    const [none, one, two] = [0, 1, 2].map(
      (count) =>
        withKey(
          plot,
          Array.from({ length: count }, () => ({ name, mark: { ink: 'ink' } as const })),
        ).height,
    ) as [number, number, number];
    expect(none).toBe(plot.height);
    expect(one).toBeGreaterThan(none);
    expect(two - one).toBe(19);
  });
});
