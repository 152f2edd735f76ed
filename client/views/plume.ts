import { Stencil } from '../ink/stencil.ts';
import { bodyOrigin, type LanderPose } from './lander/drawLander.ts';
import type { Figure } from './lander/figure.ts';
import { ramp, scatter, type Sheet } from './sheet.ts';

/** Strokes of the plume. */
const STROKES = 13;
/** New strokes this many times a second; slower than the eye reads as flicker. */
const REDRAWN = 9;

/**
 * The engine's plume as pen strokes that flare from the nozzle: longer with thrust, and turned aside where they meet the
 * ground. Plain strokes without movement where movement is not wanted.
 */
export function drawPlume(sheet: Sheet, figure: Figure, pose: LanderPose, throttle: number, height: number): void {
  if (throttle <= 0.01) return;
  const { pen, camera } = sheet;
  const origin = bodyOrigin(figure, pose);
  const stencil = new Stencil(pen, camera.placement(origin.x, origin.y, pose.angle));
  const exit = figure.hull.bottom;
  const half = 0.26 * Math.max(...figure.profile.map((point) => point.half));
  const long = figure.halfStance * (0.35 + 1.5 * throttle);
  const room = Math.max(0.15, height + exit);
  const moment = sheet.still ? 0 : sheet.time * REDRAWN;
  const step = Math.floor(moment);
  const share = moment - step;
  for (let i = 0; i < STROKES; i += 1) {
    // each stroke eases from one length to the next instead of jumping
    const uneven = scatter(i, step) * (1 - share) + scatter(i, step + 1) * share;
    const place = (2 * i) / (STROKES - 1) - 1;
    const length = long * (0.55 + 0.45 * uneven) * (1 - 0.38 * place * place);
    const down = Math.min(length, room);
    const turned = Math.max(0, length - room) * (place >= 0 ? 1 : -1);
    const startX = place * half * 0.9;
    const flare = place * (half * 0.9 + 0.3 * down);
    stencil.moveTo(startX, exit - 0.03);
    stencil.curveTo(startX + 0.25 * flare, exit - 0.5 * down, startX + flare + turned, exit - down);
  }
  pen.paint({ stroke: 'pencil', width: 'thin', alpha: 0.5 + 0.4 * ramp(throttle, 0, 0.6) });
}
