import { groundHeight, type Profile } from '../../engine/ground/index.ts';
import type { Spot } from '../ink/stencil.ts';
import { bodyOrigin } from './lander/drawLander.ts';
import type { Figure } from './lander/figure.ts';
import type { Sheet } from './sheet.ts';

/** Nearer to the ground than this the hull lies on it [m]. */
const TOUCHING = 0.06;

/** Where the hull lies deepest on the ground [m]; undefined while it touches nothing. */
export function hullOnGround(
  figure: Figure,
  pose: { readonly x: number; readonly y: number; readonly angle: number },
  terrain: Profile,
): Spot | undefined {
  const origin = bodyOrigin(figure, pose);
  const points = figure.profile.flatMap(({ z, half }) =>
    [-half, half].map((x) => ({
      x: origin.x + x * Math.cos(pose.angle) - z * Math.sin(pose.angle),
      y: origin.y + x * Math.sin(pose.angle) + z * Math.cos(pose.angle),
    })),
  );
  const above = ({ x, y }: Spot) => y - groundHeight(terrain, x);
  const [lowest] = points.toSorted((a, b) => above(a) - above(b));
  return lowest !== undefined && above(lowest) < TOUCHING ? lowest : undefined;
}

/** Where the hull struck the ground: strokes that fly from the spot. */
export function drawStrike({ pen, camera }: Sheet, spot: Spot): void {
  const x = camera.sheetX(spot.x);
  const y = camera.sheetY(spot.y);
  for (let i = 0; i <= 6; i += 1) {
    const angle = -Math.PI * (0.06 + (0.88 * i) / 6);
    const far = (i % 2 === 0 ? 25 : 18) * pen.unit;
    pen.moveTo(x + 10 * pen.unit * Math.cos(angle), y + 10 * pen.unit * Math.sin(angle));
    pen.lineTo(x + far * Math.cos(angle), y + far * Math.sin(angle));
  }
  pen.paint({ stroke: 'ink', width: 'outline' });
}

/** Crossed out: it carries nothing any more. */
export function drawCrossed({ pen, camera }: Sheet, spot: Spot): void {
  const x = camera.sheetX(spot.x);
  const y = camera.sheetY(spot.y);
  const half = 11 * pen.unit;
  for (const mark of [
    { stroke: 'card', width: 'heavy' },
    { stroke: 'ink', width: 'thick' },
  ] as const) {
    pen.moveTo(x - half, y - half);
    pen.lineTo(x + half, y + half);
    pen.moveTo(x + half, y - half);
    pen.lineTo(x - half, y + half);
    pen.paint(mark);
  }
}
