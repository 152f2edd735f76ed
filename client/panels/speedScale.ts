import type { Lettering, Pen } from '../ink/pen.ts';
import { SvgPen } from '../ink/svgPen.ts';
import { SCORECARD } from '../text/en.ts';
import { bare, speed, unitOf } from '../text/numbers.ts';
import { drawArrow } from '../views/arrow.ts';

/** Speeds sideways, in the direction of travel [m/s]. */
export interface SpeedFinding {
  readonly speed: number;
  /** Least at which it tips; undefined: none up to `upTo`. */
  readonly tip: number | undefined;
  readonly upTo: number;
  /** Limit that Site had stated; undefined: none. */
  readonly stated?: number | undefined;
  /** Reference alone, drawn dashed. */
  readonly closedForm?: number;
}

const LEFT = 18;
const AXIS = 84;
const BOTTOM = 108;
/** Below the axis, where a limit was stated. */
const STATED_ROW = 18;
/** Rows of words: over the axis the limit, above the arrow the speed. */
const ROWS = { limit: 18, speed: 42, arrow: 62 } as const;
/** Distances between figures on the axis, in the viewer's unit of speed. */
const RULINGS = [0.1, 0.2, 0.5, 1, 2, 5, 10, 20, 50, 100, 200];

/** Width of the drawing [px]; narrower on a phone, so that its letters stay legible. */
export const SCALE_WIDTH = { full: 480, narrow: 340 } as const;

/** The touchdown speed as an arrow on a ruled scale, with the tip limit as a tick and what lies beyond it hatched. */
export function drawSpeedScale(finding: SpeedFinding, width: number): { markup: string; viewBox: string } {
  const { tip, closedForm } = finding;
  const pen = new SvgPen(1, closedForm === undefined ? 'speed' : 'closed');
  const far = tip ?? finding.upTo;
  const most = Math.max(1.3 * far, 1.12 * finding.speed, 1.15 * (closedForm ?? 0), 1.15 * (finding.stated ?? 0), 0.5);
  const at = (value: number) => LEFT + (value / most) * (width - 2 * LEFT);
  if (tip !== undefined) drawBeyond(pen, at(tip), width - LEFT);
  drawAxis(pen, { most, at, rulings: width / 80 });
  if (tip !== undefined) drawTick(pen, at(tip), 'thick');
  if (closedForm !== undefined) drawTick(pen, at(closedForm), 'edge', 'dashed');
  drawArrow(pen, {
    fromX: at(0),
    fromY: ROWS.arrow,
    toX: at(finding.speed),
    toY: ROWS.arrow,
    tone: 'ink',
    shaft: 'heavy',
    head: 8,
  });
  const limit =
    closedForm === undefined
      ? { words: limitWords(finding), x: at(far) }
      : { words: `${SCORECARD.closedForm} ${speed(closedForm)}`, x: at(closedForm) };
  const blue: Lettering = { size: 17, tone: 'blue', halo: 'card' };
  writeNear(pen, limit.words, { x: limit.x, y: ROWS.limit, width, lettering: blue });
  const black: Lettering = { size: 18, bold: true, halo: 'card' };
  writeNear(pen, `${speed(finding.speed)} ${SCORECARD.movedAt}`, {
    x: at(finding.speed),
    y: ROWS.speed,
    // a speed below the limit is written below it too
    width: tip !== undefined && finding.speed < tip ? Math.max(at(tip), width / 2) : width,
    lettering: black,
  });
  if (finding.stated === undefined) return { markup: pen.markup, viewBox: `0 0 ${width} ${BOTTOM}` };
  drawStated(pen, at(finding.stated));
  const plain: Lettering = { size: 15, halo: 'card' };
  writeNear(pen, statedWords(finding), { x: at(finding.stated), y: BOTTOM + STATED_ROW - 4, width, lettering: plain });
  return { markup: pen.markup, viewBox: `0 0 ${width} ${BOTTOM + STATED_ROW}` };
}

/** What the limit is, in words. */
export function limitWords({ tip, upTo }: { readonly tip?: number | undefined; readonly upTo: number }): string {
  if (tip === undefined) return SCORECARD.neverUpTo(speed(upTo, 1));
  return tip === 0 ? SCORECARD.tipsAlways : SCORECARD.tipsFrom(speed(tip));
}

/** What Site had stated, in words; nothing where nothing was. */
export function statedWords({ stated }: Pick<SpeedFinding, 'stated'>): string {
  return stated === undefined ? '' : SCORECARD.stated(speed(stated));
}

/** A fine tick with a foot at each end, as on the section, down to its words. */
function drawStated(pen: Pen, x: number): void {
  const [top, bottom] = [ROWS.arrow - 14, BOTTOM];
  pen.moveTo(x, top);
  pen.lineTo(x, bottom);
  for (const end of [top, bottom]) {
    pen.moveTo(x - 4, end);
    pen.lineTo(x + 4, end);
  }
  pen.paint({ stroke: 'ink', width: 'outline' });
}

/** Words at a place on the axis, to whichever side has room. */
function writeNear(
  pen: Pen,
  words: string,
  place: { readonly x: number; readonly y: number; readonly width: number; readonly lettering: Lettering },
): void {
  const { x, y, width, lettering } = place;
  const wide = pen.widthOf(words, lettering);
  const start = Math.max(2, Math.min(x - 6, width - wide - 6));
  pen.text(words, start, y, lettering);
}

function drawTick(pen: Pen, x: number, width: 'edge' | 'thick', dash: 'solid' | 'dashed' = 'solid'): void {
  pen.moveTo(x, ROWS.limit + 6);
  pen.lineTo(x, AXIS);
  pen.paint({ stroke: 'blue', width, dash });
}

/** What is over the tip limit: hatched, as cut material is. */
function drawBeyond(pen: Pen, from: number, to: number): void {
  const outline = () => {
    pen.moveTo(from, ROWS.limit + 8);
    pen.lineTo(to, ROWS.limit + 8);
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

function drawAxis(pen: Pen, axis: { most: number; at: (value: number) => number; rulings: number }): void {
  const { most, at, rulings } = axis;
  const unit = unitOf('speed');
  const figures = RULINGS.find((figure) => most / (figure * unit.size) <= rulings) ?? 500;
  const ruling = figures * unit.size;
  pen.moveTo(at(0), AXIS);
  pen.lineTo(at(most), AXIS);
  pen.paint({ stroke: 'ink', width: 'edge' });
  for (let i = 0; (i * ruling) / 5 <= most; i += 1) {
    pen.moveTo(at((i * ruling) / 5), AXIS);
    pen.lineTo(at((i * ruling) / 5), AXIS + (i % 5 === 0 ? 8 : 4));
  }
  pen.paint({ stroke: 'ink', width: 'thin' });
  for (let i = 0; i * ruling <= most; i += 1) {
    // the first figure bears the unit of all
    const words = i === 0 ? `0 ${unit.sign}` : bare('speed', i * ruling, figures < 1 ? 1 : 0);
    pen.text(words, at(i * ruling), AXIS + 22, { size: 14, align: 'center', tone: 'pencil' });
  }
}
