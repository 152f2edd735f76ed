import { assert } from '../assert.ts';
import { groundHeight, groundSpan, type Terrain } from '../ground/terrain.ts';
import { addressedDeviate, noiseKey } from '../sensors/noise.ts';

/** What a crew knows of the ground: heights, and how far off they may be. */
export interface MapGround {
  readonly terrain: Terrain;
  /** Standard deviation of the true height from the mapped one [m]. */
  readonly sigma: number;
  /** Distance over which that error goes on much the same [m]. */
  readonly correlation: number;
}

/** How a map is surveyed. */
interface MapSurvey {
  /** From post to post; what is smaller is not on the map [m]. */
  readonly postSpacing: number;
  /** Standard deviation of a post's height [m]. */
  readonly sigma: number;
}

/** Posts every 10 m, good to 0.15 m. Common practice: an elevation model from orbit, some posts to the length of a lander's stance. */
export const ORBITAL_SURVEY: MapSurvey = { postSpacing: 10, sigma: 0.15 };

/** Stream of the errors of the posts. */
const POST_STREAM = 300;

/**
 * A map of some ground: at each post the mean height about it, plus an error drawn by the seed; straight from post to post. The stated error of
 * the whole is that of the posts and, root of squares, that of what the map leaves out.
 */
export function drawMap(truth: Terrain, seed: number, { postSpacing, sigma }: MapSurvey): MapGround {
  assert(postSpacing >= truth.spacing, `posts stand at least ${truth.spacing} m apart, came ${postSpacing}`);
  const key = noiseKey(seed);
  const [first, last] = groundSpan(truth);
  const posts = Math.ceil((last - first) / postSpacing) + 1;
  const means = Array.from({ length: posts }, (_, post) => meanHeight(truth, first + post * postSpacing, postSpacing));
  const smooth = { firstX: first, spacing: postSpacing, heights: means, friction: truth.friction };
  const heights = means.map((mean, post) => mean + sigma * addressedDeviate(key, POST_STREAM, post, 0));
  const leftOut = meanSquareBetween(truth, smooth);
  return {
    terrain: { ...smooth, heights },
    sigma: Math.sqrt(sigma * sigma + leftOut),
    correlation: postSpacing,
  };
}

function meanHeight(terrain: Terrain, x: number, width: number): number {
  const steps = Math.ceil(width / terrain.spacing);
  let sum = 0;
  for (let step = 0; step <= steps; step++) sum += groundHeight(terrain, x + (step / steps - 0.5) * width);
  return sum / (steps + 1);
}

/** Mean square of the difference of two grounds, over the heights of the first [m²]. */
function meanSquareBetween(terrain: Terrain, other: Terrain): number {
  let sum = 0;
  for (let index = 0; index < terrain.heights.length; index++) {
    const apart = terrain.heights[index]! - groundHeight(other, terrain.firstX + index * terrain.spacing);
    sum += apart * apart;
  }
  return sum / terrain.heights.length;
}

/** Slope of the map at x: the rise of the piece it lies on [-]. */
export function mapRise({ terrain }: MapGround, x: number): number {
  const { firstX, spacing, heights } = terrain;
  const index = Math.floor((x - firstX) / spacing);
  if (index < 0 || index >= heights.length - 1) return 0;
  return (heights[index + 1]! - heights[index]!) / spacing;
}

/** The same over two of its correlation lengths: how the ground lies for someone who knows x only roughly [-]. */
export function broadRise({ terrain, correlation }: MapGround, x: number): number {
  return (groundHeight(terrain, x + correlation) - groundHeight(terrain, x - correlation)) / (2 * correlation);
}

/**
 * Variance of how far off the map is in saying how much higher the ground is so far away [m²].
 *
 *   σ_Δ² = 2·σ²·min(1, d/ℓ)
 *
 * d  distance [m]      σ, ℓ  error of the map and its correlation [m]
 *
 * Ours: two errors far apart are unrelated, and nearer by they part in proportion to the distance. Held by the consistency of the filter over the sites.
 */
export function mapVariance({ sigma, correlation }: MapGround, distance: number): number {
  return 2 * sigma * sigma * Math.min(1, Math.abs(distance) / correlation);
}
