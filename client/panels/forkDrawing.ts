import type { Lettering, Pen } from '../ink/pen.ts';
import { SvgPen } from '../ink/svgPen.ts';
import { FORK } from '../text/en.ts';
import { decimal } from '../text/numbers.ts';

/** Of one quantity: when [s], how much. */
export interface LinePoint {
  readonly time: number;
  readonly value: number;
}

/** One quantity of two descents over time, drawn from shortly before the moment at which they part. */
export interface ForkLines {
  readonly happened: readonly LinePoint[];
  readonly forked: readonly LinePoint[];
  /** When the two part, and what that moment is called; when the source was first doubted after that [s]. */
  readonly parted: number;
  readonly partedWords?: string | undefined;
  readonly doubted?: number | undefined;
  /** What the line of the fork is called. */
  readonly forkedName: string;
  /** What the line of what happened is called, where it is not that of a fork. */
  readonly happenedName?: string;
}

const HEIGHT = 210;
const FRAME = { left: 34, right: 12, top: 40, bottom: 26 } as const;
const FLOOR = HEIGHT - FRAME.bottom;
/** So much before the failure is drawn [s]. */
const LEAD = 3;
/** Lines that differ by hundredths must not look far apart. */
const LEAST_SPAN = 1;
/** Distances between figures on either axis. */
const RULINGS = [0.2, 0.5, 1, 2, 5, 10, 20, 50, 100, 200];

type Range = readonly [from: number, to: number];

/** Where a value stands on the sheet, on either axis. */
interface Scales {
  readonly x: (time: number) => number;
  readonly y: (value: number) => number;
  readonly times: Range;
  readonly values: Range;
  readonly width: number;
}

/** A line on the sheet [px]. */
type Line = readonly { readonly x: number; readonly y: number }[];

/** What happened as a full line, the fork dashed, each named beside its line; the failure and the doubt as lines across. */
export function drawFork(lines: ForkLines, width: number): { markup: string; viewBox: string } {
  const pen = new SvgPen(1, 'fork');
  const scales = scalesOf(lines, width);
  drawAxes(pen, scales);
  if (lines.partedWords !== undefined) drawMoment(pen, scales, { at: lines.parted, words: lines.partedWords, row: 0 });
  if (lines.doubted !== undefined) drawMoment(pen, scales, { at: lines.doubted, words: FORK.doubted, row: 1 });
  const [happened, forked] = [lines.happened, lines.forked].map((points) => lineOn(scales, points));
  drawLine(pen, forked ?? [], 'dashed');
  drawLine(pen, happened ?? [], 'solid');
  nameLines(pen, scales, [
    { words: lines.happenedName ?? FORK.happened, line: happened ?? [] },
    { words: lines.forkedName, line: forked ?? [] },
  ]);
  return { markup: pen.markup, viewBox: `0 0 ${width} ${HEIGHT}` };
}

function scalesOf({ happened, forked, parted }: ForkLines, width: number): Scales {
  const from = Math.max(0, parted - LEAD);
  const seen = [...happened, ...forked].filter(({ time }) => time >= from);
  const until = Math.max(...seen.map(({ time }) => time), from + 1);
  const amounts = seen.map(({ value }) => value);
  const least = Math.min(0, ...amounts);
  const most = Math.max(least + LEAST_SPAN, ...amounts);
  const room = 0.08 * (most - least);
  const times: Range = [from, until];
  const values: Range = [least < 0 ? least - room : 0, most + room];
  const share = (value: number, [low, high]: Range) => (value - low) / (high - low);
  return {
    times,
    values,
    width,
    x: (time) => FRAME.left + share(time, times) * (width - FRAME.left - FRAME.right),
    y: (value) => FLOOR - share(value, values) * (FLOOR - FRAME.top),
  };
}

function lineOn({ x, y, times }: Scales, points: readonly LinePoint[]): Line {
  return points.filter(({ time }) => time >= times[0]).map(({ time, value }) => ({ x: x(time), y: y(value) }));
}

function drawAxes(pen: Pen, { x, y, times, values, width }: Scales): void {
  const figure: Lettering = { size: 14, tone: 'pencil' };
  pen.moveTo(FRAME.left, FRAME.top);
  pen.lineTo(FRAME.left, FLOOR);
  pen.paint({ stroke: 'ink', width: 'thin' });
  // the ground, or no speed at all
  pen.moveTo(FRAME.left, y(0));
  pen.lineTo(width - FRAME.right, y(0));
  pen.paint({ stroke: 'ink', width: 'edge' });
  for (const value of rulingsOf(values, 4)) {
    pen.moveTo(FRAME.left - 5, y(value));
    pen.lineTo(FRAME.left, y(value));
    pen.text(short(value), FRAME.left - 8, y(value) + 5, { ...figure, align: 'right' });
  }
  for (const time of rulingsOf(times, width / 70)) {
    pen.moveTo(x(time), FLOOR);
    pen.lineTo(x(time), FLOOR + 5);
    pen.text(short(time), x(time), FLOOR + 20, { ...figure, align: 'center' });
  }
  pen.paint({ stroke: 'ink', width: 'thin' });
}

/** Round values from one to another, about so many at most. */
function rulingsOf([from, to]: Range, most: number): readonly number[] {
  const step = RULINGS.find((ruling) => (to - from) / ruling <= most) ?? 500;
  const first = Math.ceil(from / step);
  return Array.from({ length: Math.floor(to / step) - first + 1 }, (_, i) => (first + i) * step);
}

function short(value: number): string {
  return decimal(value, Number.isInteger(value) ? 0 : 1);
}

/** A moment as a line across, its word on a row of its own over the frame. */
function drawMoment(
  pen: Pen,
  { x, width }: Scales,
  moment: { readonly at: number; readonly words: string; readonly row: 0 | 1 },
): void {
  const at = x(moment.at);
  const top = 14 + 17 * moment.row;
  pen.moveTo(at, top + 4);
  pen.lineTo(at, FLOOR);
  pen.paint({ stroke: 'blue', width: 'thin', dash: moment.row === 0 ? 'solid' : 'chain' });
  const lettering: Lettering = { size: 15, tone: 'blue', halo: 'card' };
  const wide = pen.widthOf(moment.words, lettering);
  pen.text(moment.words, Math.max(2, Math.min(at - 4, width - wide - 4)), top, lettering);
}

function drawLine(pen: Pen, line: Line, dash: 'solid' | 'dashed'): void {
  line.forEach(({ x, y }, i) => {
    if (i === 0) pen.moveTo(x, y);
    else pen.lineTo(x, y);
  });
  pen.paint({ stroke: 'ink', width: dash === 'solid' ? 'outline' : 'edge', dash });
  const last = line.at(-1);
  if (last === undefined) return;
  pen.arc(last.x, last.y, 3.5, 0, 2 * Math.PI);
  pen.paint({ stroke: 'ink', width: 'edge', fill: dash === 'solid' ? 'ink' : 'card' });
}

interface NamedLine {
  readonly words: string;
  readonly line: Line;
}

/** Over the upper line and under the lower one, by how they lie where the shorter one ends. */
function nameLines(pen: Pen, scales: Scales, [one, other]: readonly [NamedLine, NamedLine]): void {
  const end = Math.min(one.line.at(-1)?.x ?? 0, other.line.at(-1)?.x ?? 0);
  const isOneAbove = heightAt(one.line, end) < heightAt(other.line, end);
  const [upper, lower] = isOneAbove ? [one, other] : [other, one];
  nameAbove(pen, scales, upper, [upper.line, lower.line], end);
  nameBelow(pen, scales, lower, [upper.line, lower.line]);
}

/** Straight between two points [px]. */
function heightAt(line: Line, x: number): number {
  const after = line.findIndex((point) => point.x >= x);
  const [from, to] = [line[Math.max(0, after - 1)], line[after] ?? line.at(-1)];
  if (from === undefined || to === undefined) return 0;
  return to.x === from.x ? to.y : from.y + ((x - from.x) / (to.x - from.x)) * (to.y - from.y);
}

function letteringOf(words: string): Lettering {
  return { size: 16, bold: words === FORK.happened, halo: 'card' };
}

function nameAbove(pen: Pen, { width }: Scales, { words, line }: NamedLine, lines: readonly Line[], end: number): void {
  const lettering = letteringOf(words);
  const wide = pen.widthOf(words, lettering);
  const start = Math.min(end - wide / 3, width - FRAME.right - wide);
  const over = lines.flat().filter(({ x }) => x > start - 6 && x < start + wide + 6);
  const base = Math.max(FRAME.top + 12, Math.min(heightAt(line, start), ...over.map(({ y }) => y)) - 10);
  pen.text(words, start, base, lettering);
}

/** Near its end where there is room down to the frame, else farther to the left between line and ground, with a thin line that leads to its end. */
function nameBelow(pen: Pen, { y }: Scales, { words, line }: NamedLine, lines: readonly Line[]): void {
  const lettering = letteringOf(words);
  const wide = pen.widthOf(words, lettering);
  const last = line.at(-1) ?? { x: FRAME.left, y: FLOOR };
  const zero = y(0);
  // words that would lie on the line of zero go over it
  const floor = zero - 34 > FRAME.top && last.y <= zero + 4 ? zero : FLOOR;
  const lowest = (from: number) =>
    Math.max(
      heightAt(line, from),
      ...lines.flat().flatMap((at) => (at.x > from - 6 && at.x < from + wide + 6 ? [at.y] : [])),
    );
  let start = Math.max(FRAME.left + 6, last.x - wide - 10);
  while (start > FRAME.left + 6 && floor - lowest(start) < 32) start -= 6;
  const base = Math.min(lowest(start) + 22, floor - 8);
  pen.text(words, start, base, lettering);
  pen.moveTo(start + wide + 3, base - 5);
  pen.lineTo(last.x, last.y);
  pen.paint({ stroke: 'ink', width: 'hair' });
}
