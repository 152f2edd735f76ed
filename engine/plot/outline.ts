import type { Point } from './markup.ts';

/** The smallest convex outline round points, in order. Andrew's monotone chain. */
export function convexOutline(points: readonly Point[]): readonly Point[] {
  const sorted = points.toSorted((a, b) => a[0] - b[0] || a[1] - b[1]);
  return [...halfOutline(sorted), ...halfOutline(sorted.toReversed())];
}

/** From the first point to the last, turning one way; without the last. */
function halfOutline(sorted: readonly Point[]): readonly Point[] {
  const chain: Point[] = [];
  for (const point of sorted) {
    while (chain.length >= 2 && turnOf(chain.at(-2)!, chain.at(-1)!, point) <= 0) chain.pop();
    chain.push(point);
  }
  return chain.slice(0, -1);
}

function turnOf(a: Point, b: Point, c: Point): number {
  return (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0]);
}
