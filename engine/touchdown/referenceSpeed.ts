import { supportPolygon } from '../statics/supportPolygon.ts';
import type { TouchdownKernel } from './kernel.ts';
import type { TouchdownConditions } from './touchdownCase.ts';

/**
 * The speed that sets the scale of a search for tip limits [m/s]: the plastic trip limit on level ground of a body whose feet land together on
 * rigid legs, over its nearest edge. Never a limit of the lander itself.
 *
 *   v = sqrt(2 g I_P (L - h) / m) / h,   L^2 = b^2 + h^2,   I_P = I + m L^2            ../pivot/edgePivot.ts
 *
 * b  foot point of the center of mass to the edge [m]     h  its height above the lowest footpad [m]     I  largest principal moment [kg·m²]
 *
 * Without three feet around the center of mass, sqrt(g times the farthest point) stands in.
 */
export function referenceSpeed(kernel: TouchdownKernel, { gravity, legs = [] }: TouchdownConditions): number {
  const { lander, center, mass, moments, reach } = kernel;
  const there = lander.legs.filter(
    (_, index) => !legs.some((condition) => condition.leg === index && condition.kind === 'missing'),
  );
  const support = supportPolygon(
    there.map(({ footpad }) => [footpad[0], footpad[1]]),
    [center[0], center[1]],
  );
  const stance = support.kind === 'polygon' ? Math.min(...support.edges.map(({ distance }) => distance)) : 0;
  const height = center[2] - Math.min(...there.map(({ footpad }) => footpad[2]));
  if (!(stance > 0) || !(height > 0)) return Math.sqrt(gravity * reach);
  const arm = Math.sqrt(stance * stance + height * height);
  const inertia = Math.max(...moments) + mass * arm * arm;
  return Math.sqrt((2 * gravity * inertia * (arm - height)) / mass) / height;
}
