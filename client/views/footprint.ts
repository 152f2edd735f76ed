import type { Sheet } from './sheet.ts';
import type { Spot } from '../ink/stencil.ts';

/** The footprint: a thick line on the ground between the outer feet, or between the places straight below them. */
export function drawFootprint(sheet: Sheet, left: Spot, right: Spot): void {
  const { pen, camera } = sheet;
  const ends = [left, right].map((end) => ({ x: camera.sheetX(end.x), y: camera.sheetY(end.y) + 2 * pen.unit }));
  const [from, to] = ends;
  if (from === undefined || to === undefined) return;
  pen.moveTo(from.x, from.y);
  pen.lineTo(to.x, to.y);
  pen.paint({ stroke: 'blue', width: 'heavy', alpha: 0.95 });
  for (const end of ends) {
    pen.moveTo(end.x, end.y - 9 * pen.unit);
    pen.lineTo(end.x, end.y + 9 * pen.unit);
    pen.paint({ stroke: 'blue', width: 'outline' });
  }
}
