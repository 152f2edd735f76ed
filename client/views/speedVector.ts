import { drawArrow } from './arrow.ts';
import type { Pen } from '../ink/pen.ts';
import { letter } from './labels.ts';
import { NARROW, type Sheet } from './sheet.ts';

/** Longest arrow [drafting units]; a faster lander's arrow is cut there and says so by a break. */
const LONGEST = 290;

/** On sheets narrower than this the speed stands alone [drafting units]. */
const NARROWER = 300;
/** Width of a sheet on which speeds have their full length [drafting units]; they shrink with a narrower one. */
const FULL_WIDTH = 640;

interface SpeedReading {
  /** Of the center of mass [m]. */
  readonly x: number;
  readonly y: number;
  /** Horizontal speed, positive to the right, and what the commands lead to in a moment [m/s]. */
  readonly speed: number;
  readonly leadsTo: number;
  /** Tip limit in the direction of travel [m/s]; undefined while it is not known: no tick is drawn. */
  readonly limit: number | undefined;
  /** Limit that Site stated [m/s]; undefined where none is in force. */
  readonly inForce?: number | undefined;
  /** Which side the arrow and its words are on. */
  readonly side: 'left' | 'right';
  /** Drafting units for 1 m/s. */
  readonly unitsPerSpeed: number;
  /** Half width of the lander, where no words go [m]. */
  readonly clear: number;
  /** Two lines at the tick: the limit, and the speed in words. */
  readonly limitWords: string;
  readonly speedWords: string;
  /** Instead of the speed words where there is little room, and where there is less. */
  readonly speedShort: string;
  readonly speedBare: string;
}

/** The horizontal speed as an arrow from the center of mass, with the tip limit as a tick on its line. */
export function drawSpeedVector(sheet: Sheet, reading: SpeedReading): void {
  const { pen, camera } = sheet;
  const x = camera.sheetX(reading.x);
  const y = camera.sheetY(reading.y);
  const toward = reading.side === 'right' ? 1 : -1;
  const longest = LONGEST * Math.min(1, camera.freeWidth / (FULL_WIDTH * pen.unit));
  const unitsPerSpeed = reading.unitsPerSpeed * (longest / LONGEST);
  const reach = (speed: number) => x + Math.max(-longest, Math.min(longest, speed * unitsPerSpeed)) * pen.unit;
  const tickX = reading.limit === undefined ? undefined : reach(toward * reading.limit);
  const tipX = reach(reading.speed);
  const leadX = reach(reading.leadsTo);

  if (tickX !== undefined) drawWayToTick(pen, x, y, tickX);
  if (Math.abs(leadX - tipX) > 6 * pen.unit) {
    drawArrow(pen, { fromX: tipX, fromY: y, toX: leadX, toY: y, tone: 'ink', shaft: 'thin', head: 5, hollow: true });
  }
  if (Math.abs(tipX - x) > 3 * pen.unit) {
    drawArrow(pen, { fromX: x, fromY: y, toX: tipX, toY: y, tone: 'ink', shaft: 'thick', head: 6 });
  }
  if (Math.abs(reading.speed) * unitsPerSpeed > longest) drawBreak(sheet, (x + tipX) / 2, y);
  if (tickX !== undefined) drawTick(pen, tickX, y);
  if (reading.inForce !== undefined) drawInForce(pen, reach(toward * reading.inForce), y);
  drawWords(sheet, reading, { x, y, beyond: toward * Math.max(toward * (tickX ?? x), toward * tipX), toward });
}

/** A light ground under the whole figure keeps it readable across the lander. */
function drawWayToTick(pen: Pen, x: number, y: number, tickX: number): void {
  for (const mark of [
    { stroke: 'card', width: 'heavy', alpha: 0.8 },
    { stroke: 'blue', width: 'thin', dash: 'fine' },
  ] as const) {
    pen.moveTo(x, y);
    pen.lineTo(tickX, y);
    pen.paint(mark);
  }
}

function drawTick(pen: Pen, x: number, y: number): void {
  for (const mark of [
    { stroke: 'card', width: 'heavy' },
    { stroke: 'blue', width: 'thick' },
  ] as const) {
    pen.moveTo(x, y - 13 * pen.unit);
    pen.lineTo(x, y + 13 * pen.unit);
    pen.paint(mark);
  }
}

/** The limit in force: a fine tick with a foot to either side, so that it is not taken for the tip limit. */
function drawInForce(pen: Pen, x: number, y: number): void {
  const [half, foot] = [15 * pen.unit, 4 * pen.unit];
  for (const mark of [
    { stroke: 'card', width: 'heavy' },
    { stroke: 'ink', width: 'outline' },
  ] as const) {
    pen.moveTo(x, y - half);
    pen.lineTo(x, y + half);
    for (const end of [y - half, y + half]) {
      pen.moveTo(x - foot, end);
      pen.lineTo(x + foot, end);
    }
    pen.paint(mark);
  }
}

/** The limit over the line and the speed under it, clear of the lander. */
function drawWords(
  sheet: Sheet,
  reading: SpeedReading,
  place: { readonly x: number; readonly y: number; readonly beyond: number; readonly toward: 1 | -1 },
): void {
  const { pen, camera } = sheet;
  const { x, y, beyond, toward } = place;
  const clear = x + toward * (reading.clear * camera.framing.scale + 16 * pen.unit);
  const start = toward * Math.max(toward * (beyond + toward * 10 * pen.unit), toward * clear);
  if (toward * start > toward * (beyond + toward * 20 * pen.unit)) {
    pen.moveTo(beyond, y);
    pen.lineTo(start - toward * 5 * pen.unit, y);
    pen.paint({ stroke: 'blue', width: 'hair', dash: 'dotted' });
  }
  const isNarrow = camera.freeWidth < NARROW * pen.unit;
  const short = camera.freeWidth < NARROWER * pen.unit ? reading.speedBare : reading.speedShort;
  const align = toward > 0 ? 'left' : 'right';
  const at = (drops: readonly number[]) => drops.map((drop) => ({ x: start, y: y + drop * pen.unit }));
  letter(sheet, {
    name: 'speed',
    rank: 1,
    words: isNarrow ? short : reading.speedWords,
    lettering: { size: isNarrow ? 16 : 18, halo: 'paper', align },
    places: at(isNarrow ? [-9, 22, 40] : [27, 47, -31]),
  });
  letter(sheet, {
    name: 'limit',
    rank: 1,
    words: reading.limitWords,
    lettering: { size: 14, tone: 'blue', halo: 'paper', align },
    places: at(isNarrow ? [-33, 40, 22, -50] : [-11, -31, 47]),
  });
}

/** Two slanted strokes: the arrow is drawn shorter than it is. */
function drawBreak(sheet: Sheet, x: number, y: number): void {
  const { pen } = sheet;
  for (const shift of [-3, 3]) {
    pen.moveTo(x + (shift - 3) * pen.unit, y + 8 * pen.unit);
    pen.lineTo(x + (shift + 3) * pen.unit, y - 8 * pen.unit);
  }
  pen.paint({ stroke: 'card', width: 'heavy' });
  for (const shift of [-5, 5]) {
    pen.moveTo(x + (shift - 3) * pen.unit, y + 8 * pen.unit);
    pen.lineTo(x + (shift + 3) * pen.unit, y - 8 * pen.unit);
  }
  pen.paint({ stroke: 'ink', width: 'edge' });
}
