import { cross2, subtract2, type Vec2 } from '../math/vec2.ts';

/**
 * Convex outline of points in a plane, counter-clockwise, no three corners in line. Andrew's monotone chain (from
 * memory): sort by x then y, then build the lower and the upper side, dropping every corner that does not turn left.
 */
export function convexOutline(points: readonly Vec2[]): readonly Vec2[] {
  const sorted = points.toSorted((a, b) => a[0] - b[0] || a[1] - b[1]);
  return [...oneSide(sorted), ...oneSide(sorted.toReversed())];
}

/** One side of the outline, without its last corner, which begins the other. */
function oneSide(sorted: readonly Vec2[]): readonly Vec2[] {
  const side: Vec2[] = [];
  for (const point of sorted) {
    while (side.length >= 2 && !turnsLeft(side[side.length - 2], side[side.length - 1], point)) side.pop();
    side.push(point);
  }
  side.pop();
  return side;
}

function turnsLeft(a: Vec2 | undefined, b: Vec2 | undefined, c: Vec2): boolean {
  return a !== undefined && b !== undefined && cross2(subtract2(b, a), subtract2(c, b)) > 0;
}
