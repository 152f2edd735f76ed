import type { Pen } from '../ink/pen.ts';
import { ramp, type Sheet } from './sheet.ts';

/** Where the height is broken out: the two edges on the sheet [px], and how much is left out [m]. */
export interface HeightBreak {
  readonly upper: number;
  readonly lower: number;
  readonly leftOut: number;
}

/** Distance between the zigzags of a long break line [drafting units]. */
const APART = 230;
/** Left out at which the break is fully there [m]. */
const CLEAR = 2;

/** How clearly a break is to be seen: it opens and closes with what it leaves out. */
function breakStrength(leftOut: number): number {
  return ramp(leftOut, 0, CLEAR);
}

/** The long break across the sheet: two thin lines with a zigzag now and then, and bare paper between them. */
export function drawBreak(sheet: Sheet, gap: HeightBreak): void {
  const strength = breakStrength(gap.leftOut);
  if (strength <= 0) return;
  const { pen, camera } = sheet;
  const { width } = camera.size;
  pen.moveTo(0, gap.upper);
  pen.lineTo(width, gap.upper);
  pen.lineTo(width, gap.lower);
  pen.lineTo(0, gap.lower);
  pen.close();
  pen.paint({ fill: 'paper', alpha: strength });
  for (const y of [gap.upper, gap.lower]) {
    pen.moveTo(0, y);
    for (let x = 0.4 * APART * pen.unit; x < width; x += APART * pen.unit) zigzag(pen, x, y);
    pen.lineTo(width, y);
    pen.paint({ stroke: 'pencil', width: 'hair', alpha: strength });
  }
}

function zigzag(pen: Pen, x: number, y: number): void {
  pen.lineTo(x - 5 * pen.unit, y);
  pen.lineTo(x - 2 * pen.unit, y - 8 * pen.unit);
  pen.lineTo(x + 2 * pen.unit, y + 8 * pen.unit);
  pen.lineTo(x + 5 * pen.unit, y);
}
