import type { Pen } from '../ink/pen.ts';
import type { Sheet } from './sheet.ts';

/** The plumb line from the center of mass straight down, with its bob just off the ground. */
export function drawPlumbLine(
  sheet: Sheet,
  line: { readonly x: number; readonly y: number; readonly groundY: number },
): void {
  const { pen, camera } = sheet;
  const x = camera.sheetX(line.x);
  const top = camera.sheetY(line.y);
  const tip = Math.max(camera.sheetY(line.groundY) - 1.5 * pen.unit, top + 8 * pen.unit);
  drawLineAndBob(pen, x, top, tip);
}

/** A line that hangs from `top` to the point of its bob at `tip` [px]. */
export function drawLineAndBob(pen: Pen, x: number, top: number, tip: number): void {
  const size = Math.min(1, (tip - top) / (40 * pen.unit)) * pen.unit;
  const shoulder = tip - 22 * size;
  pen.moveTo(x, top);
  pen.lineTo(x, shoulder);
  pen.paint({ stroke: 'paper', width: 'heavy', alpha: 0.75 });
  pen.moveTo(x, top);
  pen.lineTo(x, shoulder);
  pen.paint({ stroke: 'blue', width: 'edge' });
  // a turned bob: cap, neck, body and point
  pen.moveTo(x - 3 * size, shoulder - 5 * size);
  pen.lineTo(x + 3 * size, shoulder - 5 * size);
  pen.lineTo(x + 2 * size, shoulder);
  pen.curveTo(x + 9 * size, shoulder + 3 * size, x + 5 * size, shoulder + 10 * size);
  pen.lineTo(x, tip);
  pen.lineTo(x - 5 * size, shoulder + 10 * size);
  pen.curveTo(x - 9 * size, shoulder + 3 * size, x - 2 * size, shoulder);
  pen.close();
  pen.paint({ fill: 'blue', stroke: 'blue', width: 'hair' });
}

/** The quartered mark of the center of mass. */
export function drawCenterOfMass(pen: Pen, x: number, y: number, angle: number, radius: number): void {
  pen.moveTo(x + radius, y);
  pen.arc(x, y, radius, 0, 2 * Math.PI);
  pen.paint({ fill: 'card', stroke: 'ink', width: 'edge' });
  for (const quarter of [0, 2]) {
    const from = -angle + (quarter * Math.PI) / 2 - Math.PI / 2;
    pen.moveTo(x, y);
    pen.arc(x, y, radius, from, from + Math.PI / 2);
    pen.close();
    pen.paint({ fill: 'ink' });
  }
}
