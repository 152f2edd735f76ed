import type { Soil } from './soil.ts';

/** A line of heights at equal steps in x, straight between them. */
export interface Profile {
  /** x of the first height [m]. */
  readonly firstX: number;
  /** Distance between heights [m]. */
  readonly spacing: number;
  /** [m] */
  readonly heights: readonly number[];
}

/** The ground as a section. */
export interface Terrain extends Profile {
  /** Friction of the ground under footpads and hull [-]. */
  readonly friction: number;
  /** Under the footpads; absent: rigid. The hull finds it rigid in any case. */
  readonly soil?: Soil;
}

/** Height of the ground at x [m]; beyond its ends the ground goes on level. */
export function groundHeight(terrain: Profile, x: number): number {
  const { heights } = terrain;
  const place = (x - terrain.firstX) / terrain.spacing;
  const last = heights.length - 1;
  if (!(place > 0)) return heights[0] ?? 0;
  if (place >= last) return heights[last] ?? 0;
  const index = Math.floor(place);
  const left = heights[index] ?? 0;
  return left + (place - index) * ((heights[index + 1] ?? 0) - left);
}

/** Both ends of the ground [m]. */
export function groundSpan(terrain: Terrain): readonly [first: number, last: number] {
  return [terrain.firstX, terrain.firstX + (terrain.heights.length - 1) * terrain.spacing];
}

/** Highest point of the ground [m]. */
export function highestGround(terrain: Terrain): number {
  return terrain.heights.reduce((highest, height) => Math.max(highest, height), -Infinity);
}

/** Tangent of the slope of the straight line between two points of the ground, + where it rises to the right [-]. */
export function groundRise(terrain: Terrain, leftX: number, rightX: number): number {
  return (groundHeight(terrain, rightX) - groundHeight(terrain, leftX)) / (rightX - leftX);
}

/** The soil as the ground of a touchdown has it: nothing where it is rigid. */
export function soilOf({ soil }: Terrain): { readonly soil?: Soil } {
  return soil === undefined ? {} : { soil };
}
