import { groundHeight } from '../ground/terrain.ts';
import { cos, sin } from '../math/trig.ts';
import type { DescentState } from '../world/descent.ts';
import type { MapGround } from './mapGround.ts';

/** A footpad in the body frame of the section, from the center of mass [m]. */
export interface FootOffset {
  /** + to the lander's right. */
  readonly across: number;
  /** + to the nose: negative for a foot. */
  readonly along: number;
  /** Out of the section, + toward the viewer. */
  readonly aside: number;
}

/** Where the feet of a lander are, in its own frame, with legs as they are in this state. */
export function feetOf({ legs, x, y, angle }: DescentState): readonly FootOffset[] {
  return legs.map(({ footX, footY, footZ }) => ({
    across: (footX - x) * cos(angle) + (footY - y) * sin(angle),
    along: (footY - y) * cos(angle) - (footX - x) * sin(angle),
    aside: footZ,
  }));
}

/** Height of the lowest foot above the map's ground straight below it [m]. */
export function clearanceOf(
  feet: readonly FootOffset[],
  map: MapGround,
  { x, y, angle }: { readonly x: number; readonly y: number; readonly angle: number },
): number {
  let least = Infinity;
  for (const { across, along } of feet) {
    const footX = x + across * cos(angle) - along * sin(angle);
    const footY = y + across * sin(angle) + along * cos(angle);
    least = Math.min(least, footY - groundHeight(map.terrain, footX));
  }
  return least;
}
