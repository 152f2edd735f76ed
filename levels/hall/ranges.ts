import { CONDITION_FIELDS } from '../../engine/condition/index.ts';
import type { TextRule } from '../../engine/fieldReader.ts';

/** What a file of scenes may say. */

/** One line that a hall can read from the last row. */
export const LINE: TextRule = {
  least: 1,
  most: 160,
  pattern: /^[^\p{C}\p{Zl}\p{Zp}]+$/u,
  words: 'one line, no control characters',
};

/** Bounds of what is asked about, as everywhere in the engine; ground falls in the direction of travel. */
export const RANGES = {
  slopeDeg: { ...CONDITION_FIELDS.slopeDeg, least: 0, most: 45 },
  descentRate: { ...CONDITION_FIELDS.descentRate, most: 12 },
  horizontalSpeed: { ...CONDITION_FIELDS.horizontalSpeed, least: -12, most: 12 },
  friction: { ...CONDITION_FIELDS.friction, most: 3 },
  yawDeg: { least: -360, most: 360, unit: 'deg' },
} as const;
