import { describe, expect, it } from 'vitest';
import { CAUTION } from '../../../engine/constants.ts';
import {
  barPlot,
  INKS,
  inlineSvg,
  linePlot,
  planePlot,
  polarPlot,
  standaloneSvg,
  type Plot,
} from '../../../engine/plot/index.ts';
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
  bars: () =>
    barPlot({
      label: 'bars',
      axis: 'm',
      bars: [
        { name: 'a', value: 2, tick: 1, note: '2' },
        { name: 'b', value: undefined, note: 'none' },
        { name: 'c', value: -1, note: '-1' },
      ],
    }),
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
});
