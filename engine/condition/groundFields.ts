import { FULL_CIRCLE, type ConditionField } from './conditionField.ts';

/** World, slope, friction and site. */
export const GROUND_FIELDS = {
  gravity: { words: 'gravity', meaning: 'gravity, in place of a world', unit: 'm/s^2', least: 0.001, most: 100 },
  slopeDeg: { words: 'slope', meaning: 'slope of the ground', unit: 'deg', least: -60, most: 60, fallback: 0 },
  slopeAzimuthDeg: {
    words: 'azimuth of the slope',
    meaning: 'azimuth toward which that slope falls, from the direction of travel',
    ...FULL_CIRCLE,
    fallback: 0,
  },
  fallAzimuthDeg: { words: 'azimuth of the fall', meaning: 'azimuth toward which the ground falls', ...FULL_CIRCLE },
  friction: { words: 'friction', meaning: 'friction of the ground', unit: '-', least: 0, most: 10 },
  padHeight: {
    words: 'rock or hole',
    meaning: 'rock (+) or hole (-) under one footpad',
    unit: 'm',
    least: -10,
    most: 10,
    fallback: 0,
  },
  siteSeed: {
    words: 'seed of the site',
    meaning: 'whole number that fixes the ground of the site',
    unit: '-',
    least: 0,
    most: Number.MAX_SAFE_INTEGER,
    whole: true,
    fallback: 1,
  },
  siteX: {
    words: 'place on the site',
    meaning: 'where along the section it touches down; 0 is the middle',
    unit: 'm',
    least: -1000,
    most: 1000,
    fallback: 0,
  },
  siteAzimuthDeg: {
    words: 'azimuth of the section',
    meaning: 'azimuth toward which the section runs, from the direction of travel',
    ...FULL_CIRCLE,
    fallback: 0,
  },
} as const satisfies Readonly<Record<string, ConditionField>>;

/** Under one footpad. k_c, k_phi and n are those of Bekker's law p = (k_c/b + k_phi) z^n, b the radius of the footpad. */
export const SOIL_FIELDS = {
  soilStiffness: {
    words: 'soil stiffness',
    meaning: 'elastic stiffness under one footpad, also of unloading',
    unit: 'N/m',
    least: 1e3,
    most: 1e9,
  },
  soilStrength: {
    words: 'bearing strength',
    meaning: 'bearing strength, beyond which a footpad sinks',
    unit: 'Pa',
    least: 1,
    most: 1e9,
    inCampaign: 'bearingStrength',
  },
  soilCohesive: { words: 'k_c', meaning: 'k_c', unit: 'N/m^(n+1)', least: 0, most: 1e9 },
  soilFrictional: { words: 'k_phi', meaning: 'k_phi', unit: 'N/m^(n+2)', least: 1, most: 1e10 },
  // sinkage in proportion to pressure
  soilExponent: { words: 'n', meaning: 'n', unit: '-', least: 0.2, most: 3, fallback: 1 },
} as const satisfies Readonly<Record<string, ConditionField>>;
