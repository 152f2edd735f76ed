import { SvgPen } from '../../ink/svgPen.ts';
import { unitOf } from '../../text/numbers.ts';

/** A row of the event list as the scale leads to it: where it stands [drafting units from the top], at which height it comes or came [m], and how it stands. */
export interface ScaleEntry {
  readonly y: number;
  readonly height: number | undefined;
  readonly state: 'waiting' | 'sent' | 'skipped' | 'not needed';
}

/** [drafting units] */
export const SCALE_WIDTH = 74;
const AXIS = 36;
const PAD = 12;

/** A scale of true heights from top to bottom, with a line from each inject's height to its row, and where the lander is now. */
export function drawHeightScale(options: {
  readonly tall: number;
  /** At the top of the scale [m]. */
  readonly top: number;
  readonly now: number;
  readonly entries: readonly ScaleEntry[];
}): { readonly markup: string; readonly viewBox: string } {
  const { tall, top, now, entries } = options;
  const pen = new SvgPen(1, 'height-scale');
  const at = (height: number) => PAD + (1 - Math.max(0, Math.min(1, height / top))) * (tall - 2 * PAD);
  pen.moveTo(AXIS, at(top));
  pen.lineTo(AXIS, at(0));
  pen.paint({ stroke: 'ink', width: 'edge' });
  drawTicks(pen, top, { at, now: at(now) });
  for (const { y, height, state } of entries) {
    if (height === undefined) continue;
    pen.moveTo(AXIS, at(height));
    pen.lineTo(SCALE_WIDTH - 10, y);
    pen.lineTo(SCALE_WIDTH, y);
    pen.paint({ stroke: 'pencil', width: 'hair', ...(state === 'waiting' && { dash: 'fine' as const }) });
    drawMark(pen, AXIS, at(height), state);
  }
  drawNow(pen, at(now));
  return { markup: pen.markup, viewBox: `0 0 ${SCALE_WIDTH} ${tall}` };
}

/** Heights in whole steps of this viewer's unit. */
function drawTicks(
  pen: SvgPen,
  top: number,
  scale: { readonly at: (height: number) => number; readonly now: number },
): void {
  const unit = unitOf('length');
  const most = top / unit.size;
  const step = [5, 10, 20, 50, 100, 200].find((one) => most / one <= 7) ?? 500;
  for (let value = 0; value <= most; value += step) {
    const y = scale.at(value * unit.size);
    pen.moveTo(AXIS - 5, y);
    pen.lineTo(AXIS, y);
    pen.paint({ stroke: 'ink', width: 'thin' });
    // the mark of where it is now stands in their place
    if (Math.abs(y - scale.now) < 10) continue;
    pen.text(String(value), AXIS - 8, y + 4, { size: 12, align: 'right', tone: 'pencil' });
  }
}

/** Filled: sent. Hollow: to come. A cross: it does not come. */
function drawMark(pen: SvgPen, x: number, y: number, state: ScaleEntry['state']): void {
  if (state === 'skipped' || state === 'not needed') {
    for (const way of [-1, 1]) {
      pen.moveTo(x - 4, y - 4 * way);
      pen.lineTo(x + 4, y + 4 * way);
    }
    pen.paint({ stroke: 'ink', width: 'thin' });
    return;
  }
  pen.moveTo(x + 4, y);
  pen.arc(x, y, 4, 0, 2 * Math.PI);
  pen.paint({ fill: state === 'sent' ? 'ink' : 'card', stroke: 'ink', width: 'thin' });
}

/** A filled triangle that points at the scale from the left. */
function drawNow(pen: SvgPen, y: number): void {
  pen.moveTo(AXIS, y);
  pen.lineTo(AXIS - 12, y - 6);
  pen.lineTo(AXIS - 12, y + 6);
  pen.close();
  pen.paint({ fill: 'blue' });
  pen.moveTo(AXIS, y);
  pen.lineTo(SCALE_WIDTH, y);
  pen.paint({ stroke: 'blue', width: 'thin', dash: 'fine' });
}
