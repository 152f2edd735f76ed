import { assert } from '../assert.ts';
import type { Terrain } from '../ground/terrain.ts';

/** Polyline ground, the same at every y, ready for distance queries. */
export interface ProfileGround {
  readonly firstX: number;
  readonly spacing: number;
  readonly heights: Float64Array;
  /** Length along the ground from its start to each height [m]. */
  readonly arc: Float64Array;
}

/** Places in the answer of `touchProfile`. */
export const TOUCH_HEIGHT = 0;
export const TOUCH_ARC = 1;
export const TOUCH_NX = 2;
export const TOUCH_NZ = 3;
export const TOUCH_SEGMENT = 4;
export const TOUCH_SIZE = 5;

/** Closer to a vertex than this, the normal of the segment is used [m]; below it the direction to the vertex is rounding. */
const AT_VERTEX = 1e-9;

export function prepareProfile(terrain: Terrain): ProfileGround {
  const heights = Float64Array.from(terrain.heights);
  assert(heights.length >= 2, 'a profile has at least two heights');
  const arc = new Float64Array(heights.length);
  for (let i = 1; i < heights.length; i++) {
    const rise = heights[i]! - heights[i - 1]!;
    arc[i] = arc[i - 1]! + Math.sqrt(terrain.spacing * terrain.spacing + rise * rise);
  }
  return { firstX: terrain.firstX, spacing: terrain.spacing, heights, arc };
}

/** Index of the segment below x; the first and last segments go on beyond the ends. */
function segmentAt(ground: ProfileGround, x: number): number {
  const last = ground.heights.length - 2;
  return Math.max(0, Math.min(last, Math.floor((x - ground.firstX) / ground.spacing)));
}

/** Height of the ground straight below or above x [m]. */
export function profileHeight(ground: ProfileGround, x: number): number {
  const i = segmentAt(ground, x);
  const share = (x - ground.firstX) / ground.spacing - i;
  return ground.heights[i]! + share * (ground.heights[i + 1]! - ground.heights[i]!);
}

/**
 * Signed distance of a point from the ground (positive above), the length along the ground to the nearest place, the normal there
 * and its segment, into `answer`. The distance is continuous in x and z and its gradient is the normal, so a spring on it is
 * conservative across the vertices.
 */
export function touchProfile(ground: ProfileGround, x: number, z: number, answer: Float64Array): void {
  const { firstX, spacing, heights, arc } = ground;
  const last = heights.length - 2;
  const below = segmentAt(ground, x);
  const above = z >= profileHeight(ground, x);
  let best = Infinity;
  // outward from the segment below, as long as one may be nearer than the nearest so far
  let left = below;
  let right = below + 1;
  for (;;) {
    const isLeft = left >= 0 && x - (firstX + (left + 1) * spacing) < best;
    if (!isLeft && !(right <= last && firstX + right * spacing - x < best)) return;
    const i = isLeft ? left-- : right++;
    const rise = heights[i + 1]! - heights[i]!;
    const length = arc[i + 1]! - arc[i]!;
    const dx = x - (firstX + i * spacing);
    const dz = z - heights[i]!;
    let along = (dx * spacing + dz * rise) / length;
    if (i > 0 && along < 0) along = 0;
    if (i < last && along > length) along = length;
    const toX = dx - (along * spacing) / length;
    const toZ = dz - (along * rise) / length;
    const distance = Math.sqrt(toX * toX + toZ * toZ);
    if (distance >= best) continue;
    best = distance;
    const corner = along === 0 || along === length;
    const inward = corner && distance > AT_VERTEX ? (above ? 1 : -1) / distance : 0;
    answer[TOUCH_HEIGHT] = above ? distance : -distance;
    answer[TOUCH_ARC] = arc[i]! + along;
    answer[TOUCH_NX] = inward === 0 ? -rise / length : toX * inward;
    answer[TOUCH_NZ] = inward === 0 ? spacing / length : toZ * inward;
    // halves are vertices
    answer[TOUCH_SEGMENT] = !corner ? i : along === 0 ? i - 0.5 : i + 0.5;
  }
}
