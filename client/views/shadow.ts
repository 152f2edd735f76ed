import { groundHeight, type Profile } from '../../engine/ground/index.ts';
import type { Spot } from '../ink/stencil.ts';
import { trace } from './ground.ts';
import type { Sheet } from './sheet.ts';

/** The light comes from the upper left: its shadow lies so far to the right of a thing for every meter of its height [-]. */
const LEAN = 0.5;
/** Steps to where a ray meets the ground; each is nearer by the slope times LEAN. */
const STEPS = 6;
/** Its thickness on the ground [drafting units]. */
const THICK = 10;

/** Where the shadow of a point falls on the ground [m]: x of the place that the ray through it meets. */
export function shadowX({ x, y }: Spot, terrain: Profile): number {
  let at = x;
  for (let i = 0; i < STEPS; i += 1) at = x + LEAN * Math.max(0, y - groundHeight(terrain, at));
  return at;
}

/** The shadow on the slope of what these points span [m]: far off while it is high, it meets the lander as that comes down. */
export function drawShadow(sheet: Sheet, points: readonly Spot[], terrain: Profile): void {
  const ends = points.map((point) => shadowX(point, terrain));
  const [from, to] = [Math.min(...ends), Math.max(...ends)];
  const steps = Math.max(4, Math.ceil((to - from) / terrain.spacing));
  const surface = Array.from({ length: steps + 1 }, (_, i) => from + ((to - from) * i) / steps).flatMap((x) => [
    x,
    groundHeight(terrain, x),
  ]);
  const { pen, camera } = sheet;
  trace(sheet, surface, 0);
  // thick in the middle and thin at its ends, as a flat thing seen from the side
  for (let i = surface.length - 2; i >= 0; i -= 2) {
    const share = i / (surface.length - 2);
    const thick = THICK * Math.sqrt(Math.max(0, 4 * share * (1 - share))) * pen.unit;
    pen.lineTo(camera.sheetX(surface[i] ?? 0), camera.sheetY(surface[i + 1] ?? 0) + thick);
  }
  pen.close();
  pen.paint({ fill: 'ink', alpha: 0.42 });
}
