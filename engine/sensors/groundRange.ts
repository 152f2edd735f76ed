import { groundHeight, type Profile } from '../ground/terrain.ts';
import { cos, sin } from '../math/trig.ts';

/**
 * Distance from a point down along a body axis to the ground [m], exact for ground that is straight between its heights; undefined
 * when the axis does not meet it within `most`, or does not point down.
 *
 * x, y  of the point [m]        angle  of the body from upright, counter-clockwise [rad]: the axis then points down and to the right
 *
 * Along the axis the height above the ground, r ↦ y − r·cos − ground(x + r·sin), is straight from one height of the terrain to the next: walk
 * those pieces, and take the first that ends at or below the ground.
 */
export function groundRange(
  terrain: Profile,
  { x, y, angle }: { readonly x: number; readonly y: number; readonly angle: number },
  most: number,
): number | undefined {
  const down = cos(angle);
  const across = sin(angle);
  if (down <= 0) return undefined;
  let from = 0;
  let above = y - groundHeight(terrain, x);
  if (above <= 0) return 0;
  // the next height of the terrain in the direction of the axis
  const direction = across < 0 ? -1 : 1;
  const place = (x - terrain.firstX) / terrain.spacing;
  let next = direction < 0 ? Math.ceil(place) - 1 : Math.floor(place) + 1;
  while (from < most) {
    const toNext = across === 0 ? most : (terrain.firstX + next * terrain.spacing - x) / across;
    const to = Math.min(most, toNext);
    const left = y - to * down - groundHeight(terrain, x + to * across);
    if (left <= 0) return from + ((to - from) * above) / (above - left);
    from = to;
    above = left;
    next += direction;
  }
  return undefined;
}
