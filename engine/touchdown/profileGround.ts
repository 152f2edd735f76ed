import { assert } from '../assert.ts';
import type { Terrain } from '../ground/terrain.ts';

/** Polyline ground, the same at every y, ready for distance queries. */
export interface ProfileGround {
  readonly firstX: number;
  readonly spacing: number;
  readonly heights: Float64Array;
  /** Length along the ground from its start to each height [m]. */
  readonly arc: Float64Array;
  /** Lowest and highest ground of each block of segments [m]; those with an end of the ground reach anywhere. */
  readonly lowest: Float64Array;
  readonly highest: Float64Array;
}

/** Segments of a block [-]: whoever is far above the ground passes over whole blocks of it. */
const BLOCK = 16;

/** No rounding makes a block look farther away than this share of its distance [-]. */
const ROUNDING = 1e-9;

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
  return { firstX: terrain.firstX, spacing: terrain.spacing, heights, arc, ...reachOfBlocks(heights) };
}

function reachOfBlocks(heights: Float64Array): Pick<ProfileGround, 'lowest' | 'highest'> {
  const segments = heights.length - 1;
  const blocks = Math.ceil(segments / BLOCK);
  const lowest = new Float64Array(blocks).fill(-Infinity);
  const highest = new Float64Array(blocks).fill(Infinity);
  for (let block = 1; block < blocks - 1; block++) {
    const within = heights.subarray(block * BLOCK, (block + 1) * BLOCK + 1);
    lowest[block] = Math.min(...within);
    highest[block] = Math.max(...within);
  }
  return { lowest, highest };
}

/** Whether all of a block that begins so far beside a point is farther from it than `best` [m]. */
function isBeyond(ground: ProfileGround, block: number, z: number, beside: number, best: number): boolean {
  const over = Math.max(0, ground.lowest[block]! - z, z - ground.highest[block]!);
  return beside * beside + over * over > best * best * (1 + ROUNDING);
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
    const beside = x - (firstX + (left + 1) * spacing);
    const isLeft = left >= 0 && beside < best;
    const besideRight = firstX + right * spacing - x;
    if (!isLeft && !(right <= last && besideRight < best)) return;
    if (isLeft && left % BLOCK === BLOCK - 1 && isBeyond(ground, (left - BLOCK + 1) / BLOCK, z, beside, best)) {
      left -= BLOCK;
      continue;
    }
    if (!isLeft && right % BLOCK === 0 && isBeyond(ground, right / BLOCK, z, besideRight, best)) {
      right += BLOCK;
      continue;
    }
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
