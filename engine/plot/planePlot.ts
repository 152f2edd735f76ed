import { area, circle, line, polyline, words, type Ink, type Plot, type Point } from './markup.ts';
import { axes, linearScale } from './scale.ts';

/** How the field of a class is drawn: told apart in black and white too. */
const HATCHES = ['clear', 'rising', 'falling', 'crossed', 'dotted', 'level', 'unknown'] as const;
export type Hatch = (typeof HATCHES)[number];

interface PlaneAxis {
  readonly from: number;
  readonly to: number;
  readonly count: number;
  readonly name: string;
}

interface PlaneQuestion {
  readonly label: string;
  readonly x: PlaneAxis;
  readonly y: PlaneAxis;
  /** Row by row from the lowest y, each from the lowest x: one for each node. */
  readonly cells: readonly Hatch[];
  readonly lines: readonly (readonly { readonly x: number; readonly y: number }[])[];
  readonly point?: { readonly x: number; readonly y: number; readonly words: string };
}

export const PLANE_FIELD = { left: 62, right: 548, top: 14, bottom: 330 } as const;
const SIZE = { width: 566, height: 380 } as const;

export function planePlot({ label, x, y, cells, lines, point }: PlaneQuestion): Plot {
  const { left, right, top, bottom } = PLANE_FIELD;
  const across = linearScale([x.from, x.to], [left, right], 8);
  const up = linearScale([y.from, y.to], [bottom, top], 5);
  const [halfX, halfY] = [(right - left) / (x.count - 1) / 2, (bottom - top) / (y.count - 1) / 2];
  const fields: string[] = [];
  for (let row = 0; row < y.count; row++) {
    const middle = bottom - row * 2 * halfY;
    const [low, high] = [Math.min(bottom, middle + halfY), Math.max(top, middle - halfY)];
    for (let first = 0; first < x.count;) {
      const hatch = cells[row * x.count + first]!;
      let last = first;
      while (last + 1 < x.count && cells[row * x.count + last + 1] === hatch) last++;
      const start = Math.max(left, left + (2 * first - 1) * halfX);
      const end = Math.min(right, left + (2 * last + 1) * halfX);
      if (hatch !== 'clear')
        fields.push(
          area(
            [
              [start, low],
              [end, low],
              [end, high],
              [start, high],
            ],
            `url(#plane-${hatch})`,
          ),
        );
      first = last + 1;
    }
  }
  const markup = [
    patterns(),
    ...fields,
    axes(PLANE_FIELD, across, up, { x: x.name, y: y.name }),
    x.from < 0 && x.to > 0 ? line(across.at(0), top, across.at(0), bottom, { ink: 'pencil', dash: 'chain' }) : '',
    ...lines.map((each) =>
      polyline(
        each.map((at): Point => [across.at(at.x), up.at(at.y)]),
        { ink: 'ink', width: 2.2 },
      ),
    ),
    point === undefined ? '' : mark(across.at(point.x), up.at(point.y), point.words),
  ].join('');
  return { ...SIZE, markup, label };
}

function mark(x: number, y: number, text: string): string {
  const { left, right, top, bottom } = PLANE_FIELD;
  if (x < left || x > right || y < top || y > bottom) return '';
  const toLeft = x > (left + right) / 2;
  return [
    line(x - 9, y, x + 9, y, { ink: 'blue', width: 1.6 }),
    line(x, y - 9, x, y + 9, { ink: 'blue', width: 1.6 }),
    circle(x, y, 5, { ink: 'blue', width: 1.8 }, 'card'),
    words(text, toLeft ? x - 12 : x + 12, y - 9, { ink: 'blue', align: toLeft ? 'right' : 'left', halo: 'card' }),
  ].join('');
}

const LINES: { readonly [Name in Hatch]?: { readonly path: string; readonly ink: Ink } } = {
  rising: { path: 'M-2 2L2 -2M0 8L8 0M6 10L10 6', ink: 'hatch' },
  falling: { path: 'M-2 6L2 10M0 0L8 8M6 -2L10 2', ink: 'hatch' },
  crossed: { path: 'M0 8L8 0M0 0L8 8', ink: 'hatch' },
  dotted: { path: 'M1.4 2h1.2M5.4 6h1.2', ink: 'pencil' },
  level: { path: 'M0 4h8', ink: 'hatch' },
};

function patterns(): string {
  const drawn = Object.entries(LINES).map(
    ([name, { path, ink }]) =>
      `<pattern id="plane-${name}" width="8" height="8" patternUnits="userSpaceOnUse"><rect width="8" height="8" fill="var(--soil)"/><path d="${path}" fill="none" stroke="var(--${ink})" stroke-width="1.1"/></pattern>`,
  );
  const unknown =
    '<pattern id="plane-unknown" width="8" height="8" patternUnits="userSpaceOnUse"><rect width="8" height="8" fill="var(--grid)"/></pattern>';
  return `<defs>${drawn.join('')}${unknown}</defs>`;
}

/** A piece of a hatch as a key of the plot shows it. */
export function hatchSample(hatch: Hatch): Plot {
  const filled = hatch === 'clear' ? 'var(--card)' : `url(#plane-${hatch})`;
  const markup = `${patterns()}<rect x="0.5" y="0.5" width="27" height="15" fill="${filled}" stroke="var(--pencil)"/>`;
  return { width: 28, height: 16, markup, label: '' };
}
