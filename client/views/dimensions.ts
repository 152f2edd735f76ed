import { drawArrow } from './arrow.ts';
import { letter } from './labels.ts';
import { NARROW, type Sheet } from './sheet.ts';
import type { Spot } from '../ink/stencil.ts';

/** Height of the lowest foot over the ground straight below, as a dimension line on one side of the lander. */
export function drawHeight(
  sheet: Sheet,
  reading: { foot: Spot; groundY: number; side: 'left' | 'right'; words: string },
): void {
  const { pen, camera } = sheet;
  const out = reading.side === 'left' ? -1 : 1;
  const footX = camera.sheetX(reading.foot.x);
  const x = footX + out * Math.max(58 * pen.unit, 0.9 * camera.framing.scale);
  const top = camera.sheetY(reading.foot.y);
  const bottom = camera.sheetY(reading.groundY);
  const middle = (top + bottom) / 2;
  for (const y of [top, bottom]) {
    pen.moveTo(footX + out * 12 * pen.unit, y);
    pen.lineTo(x + out * 12 * pen.unit, y);
  }
  pen.paint({ stroke: 'pencil', width: 'hair' });
  if (bottom - top > 64 * pen.unit) {
    const gap = 17 * pen.unit;
    drawArrow(pen, { fromX: x, fromY: middle - gap, toX: x, toY: top, tone: 'ink', shaft: 'thin', head: 3.5 });
    drawArrow(pen, { fromX: x, fromY: middle + gap, toX: x, toY: bottom, tone: 'ink', shaft: 'thin', head: 3.5 });
    drawHeightWords(sheet, reading, x, middle + 7 * pen.unit);
  } else {
    // too short for figures between the arrows: they stand outside, as on any drawing
    const tail = 22 * pen.unit;
    drawArrow(pen, { fromX: x, fromY: top - tail, toX: x, toY: top, tone: 'ink', shaft: 'thin', head: 3.5 });
    drawHeightWords(sheet, reading, x, top - tail - 7 * pen.unit);
  }
}

function drawHeightWords(sheet: Sheet, { words }: { readonly words: string }, x: number, y: number): void {
  const { pen, camera } = sheet;
  const isNarrow = camera.freeWidth < NARROW * pen.unit;
  letter(sheet, {
    name: 'height',
    rank: 0,
    words,
    lettering: { size: isNarrow ? 18 : 21, align: 'center', halo: 'paper' },
    places: [0, -26, -52, 26, 52, -78].map((up) => ({ x, y: y + up * pen.unit })),
  });
}

/** That a lander is drawn larger than the section, on the side of it where the arrow is not. */
export function drawTimes(
  sheet: Sheet,
  reading: {
    readonly foot: Spot;
    readonly centerY: number;
    readonly side: 'left' | 'right';
    readonly words: string;
    readonly short: string;
  },
): void {
  const { pen, camera } = sheet;
  const out = reading.side === 'left' ? -1 : 1;
  const x = camera.sheetX(reading.foot.x) + out * 14 * pen.unit;
  const y = camera.sheetY(reading.centerY);
  letter(sheet, {
    name: 'times',
    rank: 6,
    words: camera.freeWidth < NARROW * pen.unit ? reading.short : reading.words,
    lettering: { size: 13, tone: 'pencil', italic: true, halo: 'paper', align: out < 0 ? 'right' : 'left' },
    places: [4, -20, 28].map((down) => ({ x, y: y + down * pen.unit })),
    mayGo: true,
  });
}

/** The slope under the feet: a level line from one end of the footprint, an arc, and the angle in figures. */
export function drawSlope(
  sheet: Sheet,
  reading: { from: Spot; slope: number; side: 'left' | 'right'; words: string },
): void {
  const { pen, camera } = sheet;
  const out = reading.side === 'left' ? -1 : 1;
  const x = camera.sheetX(reading.from.x) + out * 26 * pen.unit;
  const rise = reading.slope * out;
  const y = camera.sheetY(reading.from.y) - Math.tan(rise) * 26 * pen.unit;
  const length = 92 * pen.unit;
  pen.moveTo(x, y);
  pen.lineTo(x + out * length, y);
  pen.paint({ stroke: 'pencil', width: 'thin', dash: 'dashed' });
  pen.moveTo(x, y);
  pen.lineTo(x + out * length * Math.cos(rise), y - length * Math.sin(rise));
  pen.paint({ stroke: 'pencil', width: 'thin' });
  const level = out > 0 ? 0 : Math.PI;
  pen.arc(x, y, 0.84 * length, level, level - out * rise, out * rise > 0);
  pen.paint({ stroke: 'pencil', width: 'thin' });
  const lettering = { size: 15, halo: 'soil' } as const;
  const width = pen.widthOf(reading.words, lettering);
  const from = x + out * (length + 9 * pen.unit) - (out > 0 ? 0 : width);
  const { left, right } = camera.size.covered;
  const hasRoom = from >= left + 8 * pen.unit && from + width <= camera.size.width - right - 8 * pen.unit;
  // where it has to give way it stands lower, clear of the lines
  const drops = hasRoom ? [24, 36, 52] : [36, 52, 24];
  // a slope that falls away would run through them
  const fall = Math.max(0, -Math.tan(rise)) * (length + width);
  letter(sheet, {
    name: 'slope',
    rank: 2,
    words: reading.words,
    lettering,
    places: drops.map((drop) => ({ x: from, y: y + fall + drop * pen.unit })),
    mayGo: true,
  });
}

/** Lengths a scale bar may have, in the viewer's unit. */
const BARS = [1, 2, 5, 10, 20, 50, 100, 200, 500];

/** On lower sheets the ground has no room for it, and it would stand among the figures [drafting units]. */
const LOW = 200;

/** The scale bar, in the ground at the lower left of the free part of the sheet, or at its right. `unit`: the viewer's, of length [m]. */
export function drawScaleBar(
  sheet: Sheet,
  ruler: { readonly unit: number; readonly format: (meters: number) => string },
): void {
  const { pen, camera } = sheet;
  if (camera.freeHeight < LOW * pen.unit) return;
  const { covered, height, width } = camera.size;
  const longest = Math.min(170 * pen.unit, camera.freeWidth * 0.35);
  const bars = BARS.map((bar) => bar * ruler.unit);
  const meters = bars.findLast((bar) => bar * camera.framing.scale <= longest) ?? ruler.unit;
  const length = meters * camera.framing.scale;
  const y = height - covered.bottom - 37 * pen.unit;
  const lettering = { size: 12, align: 'center', halo: 'soil' } as const;
  const words = ruler.format(meters);
  const half = pen.widthOf(words, lettering) / 2;
  letter(sheet, {
    name: 'scale',
    rank: 6,
    words,
    lettering,
    places: [
      { x: covered.left + 24 * pen.unit + length, y },
      { x: width - covered.right - 12 * pen.unit - half, y },
    ],
    mayGo: true,
    more: { before: length - half + 4 * pen.unit, below: 10 * pen.unit },
    along: (end) => drawBar(sheet, end, length),
  });
}

/** Half of it filled, with its zero; `end`: under the words at its right end. */
function drawBar({ pen }: Sheet, end: Spot, length: number): void {
  const x = end.x - length;
  const y = end.y + 11 * pen.unit;
  for (const [index, fill] of (['ink', 'card'] as const).entries()) {
    const from = x + (index * length) / 2;
    pen.moveTo(from, y);
    pen.lineTo(from + length / 2, y);
    pen.lineTo(from + length / 2, y - 5 * pen.unit);
    pen.lineTo(from, y - 5 * pen.unit);
    pen.close();
    pen.paint({ fill, stroke: 'ink', width: 'thin' });
  }
  pen.text('0', x, end.y, { size: 12, align: 'center', halo: 'soil' });
}
