import { cos, nextUniform, type RandomState } from '../../engine/math/index.ts';
import type { CraterField, StepField } from '../sites/site.ts';
import type { Profile } from './profile.ts';

/** Bowls of random place and diameter, one cosine wave across: flat at the middle and at the rim. */
export function drawCraters(field: CraterField, width: number, random: RandomState): Profile {
  const { count, leastDiameter, mostDiameter, depthRatio } = field;
  const craters = Array.from({ length: count }, () => {
    const center = (nextUniform(random) - 0.5) * width;
    const diameter = leastDiameter + nextUniform(random) * (mostDiameter - leastDiameter);
    return { center, diameter };
  });
  return (x) =>
    craters.reduce((height, { center, diameter }) => {
      const share = Math.abs(x - center) / diameter;
      return share < 0.5 ? height - (depthRatio * diameter * (1 + cos(2 * Math.PI * share))) / 2 : height;
    }, 0);
}

/** Ledges of random place and height, half a cosine wave wide. Height 0 at the far left. */
export function drawSteps(field: StepField, width: number, random: RandomState): Profile {
  const steps = Array.from({ length: field.count }, () => {
    const from = (nextUniform(random) - 0.5) * width;
    const height = (2 * nextUniform(random) - 1) * field.mostHeight;
    return { from, height };
  });
  return (x) =>
    steps.reduce((sum, { from, height }) => {
      const share = Math.max(0, Math.min(1, (x - from) / field.width));
      return sum + (height * (1 - cos(Math.PI * share))) / 2;
    }, 0);
}
