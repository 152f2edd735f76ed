import type { DocumentBudget } from '../documentText.ts';
import type { NumberRange, TextRule } from '../fieldReader.ts';

/**
 * What a lander file may say: the budgets and the range of each field (the published schema repeats them), and the bounds
 * of the checks between fields. The ranges are wide, from a lander that one person can carry to one of hundreds of tonnes.
 * The bounds between fields are narrow on purpose: the largest allowed value of each is less than a thousand times the
 * smallest, so that no file stays inside when one quantity is given in millimeters, grams, tonnes or kilonewtons.
 */

/** The only format that is read. */
export const LANDER_FORMAT = 'kilter-lander/1';

export const LANDER_BUDGET: DocumentBudget = { mostBytes: 64 * 1024, deepest: 8 };

export const COUNTS = {
  parts: { least: 1, most: 64, of: 'parts' },
  tanks: { least: 0, most: 16, of: 'tanks' },
  legs: { least: 3, most: 16, of: 'legs' },
  stages: { least: 1, most: 6, of: 'crush stages' },
  hull: { least: 4, most: 128, of: 'points' },
} as const;

const LINE = /^[^\p{C}\p{Z}](?:[^\p{C}\p{Zl}\p{Zp}]*[^\p{C}\p{Z}])?$/u;
const LINE_WORDS = 'one line, no control characters, no space at either end';
export const TEXTS = {
  id: { least: 1, most: 32, pattern: /^[a-z][a-z0-9-]*$/, words: 'a to z first, then a to z, 0 to 9 and -' },
  name: { least: 1, most: 60, pattern: LINE, words: LINE_WORDS },
  summary: { least: 1, most: 400, pattern: LINE, words: LINE_WORDS },
} as const satisfies Readonly<Record<string, TextRule>>;

export const RANGES = {
  mass: { least: 0.01, most: 500_000, unit: 'kg' },
  /** A component of a position. */
  position: { least: -60, most: 60, unit: 'm' },
  /** Height above the footpad plane. */
  height: { least: 0, most: 120, unit: 'm' },
  hullHeight: { least: 0.02, most: 120, unit: 'm' },
  hipHeight: { least: 0.05, most: 60, unit: 'm' },
  hipRadius: { least: 0.02, most: 30, unit: 'm' },
  radius: { least: 0.01, most: 20, unit: 'm' },
  length: { least: 0.01, most: 100, unit: 'm' },
  moment: { least: 0, most: 1e8, unit: 'kg·m²' },
  fill: { least: 0, most: 1, unit: '-' },
  density: { least: 50, most: 2500, unit: 'kg/m³' },
  legCount: { least: COUNTS.legs.least, most: COUNTS.legs.most, unit: '-', whole: true },
  legRadius: { least: 0.1, most: 30, unit: 'm' },
  azimuthDeg: { least: -360, most: 360, unit: 'deg' },
  footpadDiameter: { least: 0.02, most: 5, unit: 'm' },
  stiffness: { least: 1e3, most: 1e9, unit: 'N/m' },
  force: { least: 1, most: 1e7, unit: 'N' },
  stroke: { least: 0.01, most: 3, unit: 'm' },
  thrust: { least: 1, most: 1e7, unit: 'N' },
  specificImpulse: { least: 50, most: 600, unit: 's' },
  lag: { least: 0, most: 3, unit: 's' },
  torque: { least: 0.01, most: 1e7, unit: 'N·m' },
  probeLength: { least: 0, most: 5, unit: 'm' },
} as const satisfies Readonly<Record<string, NumberRange>>;

/**
 * Checks between fields: least and most of each, both included. Box: the smallest one, with sides along x, y and z, around
 * the hull points and the hips.
 */
export const BOUNDS = {
  /** Mass over the volume of the box. From a loose frame to nearly solid water. */
  meanDensity: { least: 4, most: 1000, unit: 'kg/m³' },
  /** Longest over shortest side of the box. */
  slenderness: { least: 1, most: 12, unit: '-' },
  /** Larger side of the footprint over the longest side of the box. */
  footprintShare: { least: 0.1, most: 6, unit: '-' },
  /** Maximum thrust over mass. */
  thrustAcceleration: { least: 0.3, most: 60, unit: 'm/s²' },
  /** Minimum over maximum thrust. */
  throttle: { least: 0.01, most: 1, unit: '-' },
  /** Attitude torque over the larger moment of inertia about x or y. */
  attitudeAcceleration: { least: 0.003, most: 2, unit: 'rad/s²' },
  /** Force of a crush stage times the number of legs, over mass. */
  crushDeceleration: { least: 2, most: 400, unit: 'm/s²' },
  /** Crush force of the lateral strut over that of the first stage. */
  secondaryForce: { least: 0.02, most: 5, unit: '-' },
  /** Elastic shortening under the (first) crush force, over the stroke of all stages. */
  elasticShare: { least: 0.001, most: 0.5, unit: '-' },
  /** Stiffness of the bottomed leg over that before crushing: a leg that softened at unchanged force would make energy. */
  bottomedStiffening: { least: 1, most: 50, unit: '-' },
  /** Stroke of all stages over the length from footpad to hip. */
  strokeShare: { least: 0.01, most: 0.8, unit: '-' },
  /** Footpad diameter over the length from footpad to hip. */
  footpadShare: { least: 0.02, most: 2, unit: '-' },
  /** Probe length over the length from footpad to hip; asked only of a probe that is there. */
  probeShare: { least: 0.05, most: 3, unit: '-' },
  /** Mass over volume of a part that is a solid box or cylinder. From stowed gear to the heaviest metal. */
  partDensity: { least: 1, most: 23_000, unit: 'kg/m³' },
  /** Mass over surface of a part that is a thin-walled tube. From foil to plate with all that hangs on it. */
  shellDensity: { least: 1, most: 900, unit: 'kg/m²' },
  /** Radius of gyration of a part with stated moments, over the longest side of the box. */
  gyration: { least: 0.02, most: 0.6, unit: '-' },
} as const satisfies Readonly<Record<string, NumberRange>>;

/** Parts and tanks have their centers inside the box, or outside by no more than this share of its longest side [-]. */
export const OUTSIDE_SHARE = 0.25;

/** Radius of gyration of the lander about any axis, over the longest side of the box, at least [-]. */
export const LEAST_GYRATION = 0.01;

/** The foot point of the center of mass lies at least so far inside every edge of the footprint [m]. */
export const LEAST_STANCE = 1e-3;
