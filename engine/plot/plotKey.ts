import { line, words, type Plot, type Stroke } from './markup.ts';
import type { Hatch } from './planePlot.ts';

/** What a line or a hatch of a plot means. */
export interface KeyEntry {
  readonly name: string;
  readonly mark: Stroke | Hatch;
}

const ROW = 19;
const SAMPLE = 30;
const GAP = 20;
/** About, of the letters of a key [px]. */
const LETTER = 6.1;

/** The plot with its key below it: a plot that leaves the page must still be read. */
export function withKey(plot: Plot, entries: readonly KeyEntry[]): Plot {
  let [x, row] = [8, 0];
  const marks = entries.map(({ name, mark }) => {
    const wide = SAMPLE + 6 + LETTER * name.length + GAP;
    if (x > 8 && x + wide - GAP > plot.width) [x, row] = [8, row + 1];
    const middle = plot.height + 8 + ROW * row;
    const drawn = sample(mark, x, middle) + words(name, x + SAMPLE + 6, middle + 4, { size: 12 });
    x += wide;
    return drawn;
  });
  const height = entries.length === 0 ? plot.height : plot.height + 10 + ROW * (row + 1);
  return { ...plot, height, markup: plot.markup + marks.join('') };
}

/** A hatch is that of the plane above, which has its patterns. */
function sample(mark: Stroke | Hatch, x: number, middle: number): string {
  if (typeof mark !== 'string') return line(x, middle, x + SAMPLE, middle, mark);
  const fill = mark === 'clear' ? 'var(--card)' : `url(#plane-${mark})`;
  return `<rect x="${x}" y="${middle - 6}" width="${SAMPLE}" height="13" fill="${fill}" stroke="var(--pencil)"/>`;
}
