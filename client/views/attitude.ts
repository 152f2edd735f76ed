import type { Sheet } from './sheet.ts';

const DEGREE = Math.PI / 180;
const SPAN = 30;

/** Attitude over the lander: an arc of degrees with a filled mark for the actual tilt and a hollow one for the commanded. */
export function drawAttitude(
  sheet: Sheet,
  reading: { x: number; y: number; radius: number; angle: number; commanded: number; alpha: number },
): void {
  const { pen, camera } = sheet;
  const x = camera.sheetX(reading.x);
  const y = camera.sheetY(reading.y);
  const radius = Math.max(reading.radius * camera.framing.scale, 48 * pen.unit);
  const up = -Math.PI / 2;
  pen.arc(x, y, radius, up - SPAN * DEGREE, up + SPAN * DEGREE);
  pen.paint({ stroke: 'pencil', width: 'hair', alpha: reading.alpha });
  for (let degrees = -SPAN; degrees <= SPAN; degrees += 5) {
    const angle = up + degrees * DEGREE;
    const length = (degrees % 10 === 0 ? 8 : 4) * pen.unit;
    pen.moveTo(x + radius * Math.cos(angle), y + radius * Math.sin(angle));
    pen.lineTo(x + (radius + length) * Math.cos(angle), y + (radius + length) * Math.sin(angle));
  }
  pen.paint({ stroke: 'pencil', width: 'thin', alpha: reading.alpha });
  mark(sheet, x, y, radius, up - reading.commanded, 'hollow');
  mark(sheet, x, y, radius, up - reading.angle, 'filled');
}

/** A small wedge under the arc that points at its scale. */
function mark(sheet: Sheet, x: number, y: number, radius: number, angle: number, kind: 'hollow' | 'filled'): void {
  const { pen } = sheet;
  const half = kind === 'hollow' ? 6.5 : 4.5;
  const depth = kind === 'hollow' ? 13 : 9;
  const tip = radius - 1 * pen.unit;
  const base = radius - depth * pen.unit;
  const acrossX = -Math.sin(angle) * half * pen.unit;
  const acrossY = Math.cos(angle) * half * pen.unit;
  pen.moveTo(x + tip * Math.cos(angle), y + tip * Math.sin(angle));
  pen.lineTo(x + base * Math.cos(angle) + acrossX, y + base * Math.sin(angle) + acrossY);
  pen.lineTo(x + base * Math.cos(angle) - acrossX, y + base * Math.sin(angle) - acrossY);
  pen.close();
  if (kind === 'hollow') pen.paint({ fill: 'paper', stroke: 'ink', width: 'edge' });
  else pen.paint({ fill: 'ink', stroke: 'ink', width: 'hair' });
}
