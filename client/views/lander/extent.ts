import type { Bounds } from '../labels.ts';
import type { LanderPose } from './drawLander.ts';
import type { Figure } from './figure.ts';

/** How far a lander reaches as it stands or leans: its feet, and the top of its hull [m]. */
export function landerExtent(figure: Figure, { x, y, angle, feet }: LanderPose): Bounds {
  const up = figure.hull.top - figure.centerHeight;
  const corners = [figure.hull.left, figure.hull.right].map((side) => ({
    x: x + side * Math.cos(angle) - up * Math.sin(angle),
    y: y + side * Math.sin(angle) + up * Math.cos(angle),
  }));
  const points = [...feet, ...corners];
  const [xs, ys] = [points.map((point) => point.x), points.map((point) => point.y)];
  return { left: Math.min(...xs), right: Math.max(...xs), top: Math.max(...ys), bottom: Math.min(...ys) };
}
