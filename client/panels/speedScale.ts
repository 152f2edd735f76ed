import { SvgPen } from '../ink/svgPen.ts';
import type { Lettering, Pen } from '../ink/pen.ts';
import { SCORECARD } from '../text/en.ts';
import { decimal, speed } from '../text/numbers.ts';
import { drawArrow } from '../views/arrow.ts';

export interface SpeedFinding {
  /** In the direction of travel [m/s]. */
  readonly speed: number;
  readonly tripping: number;
  readonly cautious?: number;
}

const LEFT = 18;
const AXIS = 110;
const BOTTOM = 162;
/** Heights of the rows of words over the axis. */
const ROWS = { over: 15, tripping: 36, cautious: 62 } as const;
/** Distances between figures on the axis [m/s]. */
const RULINGS = [0.1, 0.2, 0.5, 1, 2, 5, 10];

/** Width of the drawing [px]; half as wide on a phone, so that its letters stay legible. */
export const SCALE_WIDTH = { full: 640, narrow: 340 } as const;

/** The touchdown speed as an arrow on a ruled scale, with both tip limits as ticks and what lies beyond hatched. */
export function drawSpeedScale(finding: SpeedFinding, width: number): { markup: string; viewBox: string } {
  const pen = new SvgPen(1, 'speed');
  const least = Math.min(0, 1.1 * finding.tripping, finding.cautious ?? 0);
  const most = Math.max(1.3 * finding.tripping, 1.12 * finding.speed, 0.5);
  const at = (value: number) => LEFT + ((value - least) / (most - least)) * (width - 2 * LEFT);
  drawBeyond(pen, at(Math.max(least, finding.tripping)), width - LEFT);
  drawAxis(pen, { least, most, at, rulings: width / 90 });
  const tripping = placeTripping(pen, finding.tripping, at(finding.tripping), width);
  const cautious =
    finding.cautious === undefined
      ? undefined
      : placeCautious(pen, finding.cautious, at(finding.cautious), at(finding.tripping));
  if (cautious !== undefined) drawTick(pen, cautious, { width: 'edge', dash: 'fine' });
  drawTick(pen, tripping, { width: 'thick' });
  // words last: where one stands on the other's line, it stays readable
  for (const tick of [cautious, tripping])
    if (tick !== undefined) pen.text(tick.words, tick.wordsX, tick.y, tick.lettering);
  drawArrow(pen, {
    fromX: at(0),
    fromY: AXIS - 15,
    toX: at(finding.speed),
    toY: AXIS - 15,
    tone: 'ink',
    shaft: 'heavy',
    head: 8,
  });
  const end = at(finding.speed);
  const words = `${SCORECARD.arrived} ${speed(finding.speed)}`;
  const style: Lettering = { size: 18, bold: true };
  const align = end > 0.5 * width ? 'right' : 'left';
  pen.text(words, align === 'right' ? end : Math.max(LEFT, end - 8), AXIS + 46, { ...style, align });
  pen.moveTo(end, AXIS - 6);
  pen.lineTo(end, AXIS + 30);
  pen.paint({ stroke: 'ink', width: 'hair' });
  const top = cautious?.y === ROWS.over ? 0 : ROWS.tripping - 18;
  return { markup: pen.markup, viewBox: `0 ${top} ${width} ${BOTTOM - top}` };
}

/** A limit on the scale: its line, and the words that belong to it. */
interface Tick {
  readonly x: number;
  /** Row of the words, under which the line begins. */
  readonly y: number;
  readonly words: string;
  readonly lettering: Lettering;
  readonly wordsX: number;
}

function drawTick(pen: Pen, { x, y }: Tick, line: { readonly width: 'edge' | 'thick'; readonly dash?: 'fine' }): void {
  pen.moveTo(x, y + 6);
  pen.lineTo(x, AXIS);
  pen.paint({ stroke: 'blue', ...line });
}

/** The tick of the tripping limit, with its words over it: to whichever side has room, else across it. */
function placeTripping(pen: Pen, value: number, x: number, width: number): Tick {
  const lettering: Lettering = { size: 17, tone: 'blue', halo: 'card' };
  const words = `${SCORECARD.trippingLimit} ${speed(value)}`;
  const wide = pen.widthOf(words, lettering);
  const row = { x, y: ROWS.tripping, words };
  if (x - 5 + wide < width) return { ...row, wordsX: x - 5, lettering };
  if (x + 5 - wide > 0) return { ...row, wordsX: x + 5, lettering: { ...lettering, align: 'right' } };
  return { ...row, wordsX: width / 2, lettering: { ...lettering, align: 'center' } };
}

/**
 * The cautious limit is the lower one. Its words stand in the row under the other's, left of the tripping tick, as near to
 * their own tick as they can; where there is no room at all, over everything.
 */
function placeCautious(pen: Pen, value: number, x: number, trippingX: number): Tick {
  const lettering: Lettering = { size: 15, tone: 'blue', halo: 'card', align: 'right' };
  const words = `${SCORECARD.cautiousLimit} ${speed(value)}`;
  const wide = pen.widthOf(words, lettering);
  const most = trippingX - 8;
  const end = Math.max(x + 5, wide);
  return wide <= most
    ? { x, y: ROWS.cautious, words, wordsX: Math.min(most, end), lettering }
    : { x, y: ROWS.over, words, wordsX: end, lettering };
}

/** What is over the tripping limit: hatched, as cut material is. */
function drawBeyond(pen: Pen, from: number, to: number): void {
  const outline = () => {
    pen.moveTo(from, AXIS - 58);
    pen.lineTo(to, AXIS - 58);
    pen.lineTo(to, AXIS);
    pen.lineTo(from, AXIS);
    pen.close();
  };
  outline();
  pen.paint({ fill: 'shade' });
  outline();
  pen.within(() => {
    for (let x = from - 70; x < to; x += 9) {
      pen.moveTo(x, AXIS);
      pen.lineTo(x + 60, AXIS - 60);
    }
    pen.paint({ stroke: 'faint', width: 'hair' });
  });
}

function drawAxis(
  pen: Pen,
  axis: { least: number; most: number; at: (value: number) => number; rulings: number },
): void {
  const { least, most, at, rulings } = axis;
  const ruling = RULINGS.find((step) => (most - least) / step <= rulings) ?? 10;
  pen.moveTo(at(least), AXIS);
  pen.lineTo(at(most), AXIS);
  pen.paint({ stroke: 'ink', width: 'edge' });
  const first = Math.ceil(least / ruling);
  for (let i = first; i * ruling <= most; i += 1) {
    pen.moveTo(at(i * ruling), AXIS);
    pen.lineTo(at(i * ruling), AXIS + 8);
  }
  for (let i = Math.ceil((least / ruling) * 5); (i * ruling) / 5 <= most; i += 1) {
    pen.moveTo(at((i * ruling) / 5), AXIS);
    pen.lineTo(at((i * ruling) / 5), AXIS + 4);
  }
  pen.paint({ stroke: 'ink', width: 'thin' });
  for (let i = first; i * ruling <= most; i += 1) {
    pen.text(decimal(i * ruling, ruling < 1 ? 1 : 0), at(i * ruling), AXIS + 22, {
      size: 14,
      align: 'center',
      tone: 'pencil',
    });
  }
}
