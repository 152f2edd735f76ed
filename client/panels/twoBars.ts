import type { Pen } from '../ink/pen.ts';
import { SvgPen } from '../ink/svgPen.ts';

interface Bar {
  readonly words: string;
  /** Of the whole scale [-]; undefined: there is no figure. */
  readonly share: number | undefined;
  /** Hollow is commanded or reckoned, filled is measured. */
  readonly look: 'hollow' | 'filled';
}

const WIDTH = 320;
/** Room for the names before the scale, and for the overshoot of its end. */
const LEFT = 90;
const RIGHT = 8;
const TOP = 6;
const BAR = 15;
const GAP = 7;
const BOTTOM = TOP + 2 * BAR + GAP;
const HEIGHT = BOTTOM + 10;

/**
 * Two figures as bars on one scale from nothing to all; what lies between their ends is hatched. `most`: share that cannot be passed, as a tick with
 * what lies beyond it in shade.
 */
export function drawTwoBars(
  bars: readonly [Bar, Bar],
  options: { readonly id: string; readonly most?: number },
): { readonly markup: string; readonly viewBox: string } {
  const pen = new SvgPen(1, options.id);
  const { most = 1 } = options;
  if (most < 1) {
    box(pen, at(most), TOP - 4, at(1), BOTTOM + 4);
    pen.paint({ fill: 'shade' });
  }
  for (const [row, bar] of bars.entries()) drawBar(pen, bar, TOP + row * (BAR + GAP));
  const [one, other] = bars.map(({ share }) => share);
  if (one !== undefined && other !== undefined) drawBetween(pen, at(Math.min(one, other)), at(Math.max(one, other)));
  drawScale(pen);
  if (most < 1) {
    pen.moveTo(at(most), TOP - 5);
    pen.lineTo(at(most), BOTTOM + 5);
    pen.paint({ stroke: 'blue', width: 'thick' });
  }
  return { markup: pen.markup, viewBox: `0 0 ${WIDTH} ${HEIGHT}` };
}

function at(share: number): number {
  return LEFT + Math.max(0, Math.min(1, share)) * (WIDTH - LEFT - RIGHT);
}

function drawBar(pen: Pen, { words, share, look }: Bar, top: number): void {
  pen.text(words, LEFT - 8, top + BAR - 3, { size: 13.5, align: 'right' });
  if (share === undefined) return;
  box(pen, at(0), top, at(share), top + BAR);
  pen.paint({ fill: look === 'filled' ? 'ink' : 'card', stroke: 'ink', width: 'edge' });
}

/** The difference: hatched from the end of the shorter bar to that of the longer one. */
function drawBetween(pen: Pen, from: number, to: number): void {
  if (to - from < 2) return;
  box(pen, from, TOP, to, TOP + 2 * BAR + GAP);
  pen.within(() => {
    for (let x = from - 40; x < to; x += 6) {
      pen.moveTo(x, BOTTOM);
      pen.lineTo(x + 40, TOP);
    }
    pen.paint({ stroke: 'hatch', width: 'thin' });
  });
  for (const x of [from, to]) {
    pen.moveTo(x, TOP);
    pen.lineTo(x, BOTTOM);
  }
  pen.paint({ stroke: 'pencil', width: 'thin', dash: 'fine' });
}

function drawScale(pen: Pen): void {
  pen.moveTo(at(0), BOTTOM + 4);
  pen.lineTo(at(1), BOTTOM + 4);
  for (let tenths = 0; tenths <= 10; tenths += 1) {
    pen.moveTo(at(tenths / 10), BOTTOM + 4);
    pen.lineTo(at(tenths / 10), BOTTOM + (tenths % 5 === 0 ? 10 : 7));
  }
  pen.paint({ stroke: 'ink', width: 'thin' });
}

function box(pen: Pen, left: number, top: number, right: number, bottom: number): void {
  pen.moveTo(left, top);
  pen.lineTo(right, top);
  pen.lineTo(right, bottom);
  pen.lineTo(left, bottom);
  pen.close();
}
