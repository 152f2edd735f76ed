import { seedRandom } from '../../engine/math/index.ts';
import type { Terrain } from '../../engine/ground/index.ts';
import type { Site } from '../sites/site.ts';
import { baseProfile } from './baseProfile.ts';
import { drawCraters, drawSteps } from './features.ts';
import type { Profile } from './profile.ts';
import { drawUndulation } from './undulation.ts';

/** Streams of the generator, one a feature, so that a change of one leaves the others where they were. */
const UNDULATION = 1;
const CRATERS = 2;
const STEPS = 3;

/**
 * The ground of a site as a section, from a seed: base slopes, smooth undulation, a few craters and steps. The same site
 * and seed give the same bits.
 */
export function createGround(site: Site, seed: number): Terrain {
  const { ground } = site;
  const firstX = -ground.width / 2;
  const count = Math.round(ground.width / ground.spacing) + 1;
  const profiles: readonly Profile[] = [
    baseProfile(ground.slopes),
    drawUndulation(ground.undulation, seedRandom(seed, UNDULATION)),
    drawCraters(ground.craters, ground.width, seedRandom(seed, CRATERS)),
    drawSteps(ground.steps, ground.width, seedRandom(seed, STEPS)),
  ];
  const heightAt = (i: number) => profiles.reduce((sum, profile) => sum + profile(firstX + i * ground.spacing), 0);
  return {
    firstX,
    spacing: ground.spacing,
    heights: Array.from({ length: count }, (_, i) => heightAt(i)),
    friction: ground.friction,
    ...(ground.soil && { soil: ground.soil }),
  };
}
