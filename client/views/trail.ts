import { letter } from './labels.ts';
import type { Sheet } from './sheet.ts';

/** Where the center of mass has been: one point every so often, with the time since the start. */
export interface TrailPoint {
  readonly x: number;
  readonly y: number;
  readonly seconds: number;
}

/** The path flown so far, dashed, with a small ring and the time every few seconds. */
export function drawTrail(
  sheet: Sheet,
  points: readonly TrailPoint[],
  options: {
    readonly every: number;
    readonly words: (seconds: number) => string;
    readonly clear: number;
    /** All of the path is drawn so much higher, so that it leads to a lander that is drawn larger than the section [m]. */
    readonly lifted?: number;
  },
): void {
  const { pen, camera } = sheet;
  const last = points.at(-1);
  if (last === undefined) return;
  const { lifted = 0 } = options;
  points.forEach((point, index) => {
    if (index === 0) pen.moveTo(camera.sheetX(point.x), camera.sheetY(point.y + lifted));
    else pen.lineTo(camera.sheetX(point.x), camera.sheetY(point.y + lifted));
  });
  pen.paint({ stroke: 'pencil', width: 'thin', dash: 'dashed', alpha: 0.9 });
  for (let i = 1; i < points.length; i += 1) {
    const point = points[i];
    const before = points[i - 1];
    if (point === undefined || before === undefined) continue;
    if (Math.floor(point.seconds / options.every) === Math.floor(before.seconds / options.every)) continue;
    // marks keep clear of the lander itself
    if (Math.hypot(point.x - last.x, point.y - last.y) < options.clear) continue;
    const x = camera.sheetX(point.x);
    const y = camera.sheetY(point.y + lifted);
    pen.moveTo(x + 3 * pen.unit, y);
    pen.arc(x, y, 3 * pen.unit, 0, 2 * Math.PI);
    pen.paint({ fill: 'paper', stroke: 'pencil', width: 'thin' });
    const seconds = Math.floor(point.seconds / options.every) * options.every;
    letter(sheet, {
      name: `path ${seconds}`,
      rank: 7,
      words: options.words(seconds),
      lettering: { size: 12, tone: 'pencil', italic: true, halo: 'paper' },
      places: [{ x: x + 9 * pen.unit, y: y - 5 * pen.unit }],
      mayGo: true,
      isFixed: true,
    });
  }
}
