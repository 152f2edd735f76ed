import type { DocumentBudget } from '../../engine/documentText.ts';
import type { NumberRange, TextRule } from '../../engine/fieldReader.ts';

/** What a site file may say; the published schema repeats these numbers. */

/** The only format that is read. */
export const SITE_FORMAT = 'kilter-site/1';

export const SITE_BUDGET: DocumentBudget = { mostBytes: 64 * 1024, deepest: 8 };

export const MOST_SLOPES = 16;

const WORDS = { pattern: /^[^\p{C}\p{Zl}\p{Zp}]+$/u, words: 'one line, no control characters' };

export const TEXTS = {
  id: { least: 1, most: 32, pattern: /^[a-z][a-z0-9-]*$/, words: 'a to z first, then a to z, 0 to 9 and -' },
  name: { least: 1, most: 60, ...WORDS },
  summary: { least: 1, most: 400, ...WORDS },
} as const satisfies Readonly<Record<string, TextRule>>;

export const RANGES = {
  startX: { least: -1000, most: 1000, unit: 'm' },
  width: { least: 100, most: 2000, unit: 'm' },
  spacing: { least: 0.25, most: 2, unit: 'm' },
  friction: { least: 0, most: 1.5, unit: '-' },
  untilX: { least: -1000, most: 1000, unit: 'm' },
  slopeDeg: { least: -30, most: 30, unit: 'deg' },
  rmsHeight: { least: 0, most: 5, unit: 'm' },
  wavelength: { least: 2, most: 500, unit: 'm' },
  hurst: { least: 0, most: 1, unit: '-' },
  count: { least: 0, most: 200, unit: '-', whole: true },
  diameter: { least: 1, most: 100, unit: 'm' },
  depthRatio: { least: 0, most: 0.25, unit: '-' },
  stepHeight: { least: 0, most: 2, unit: 'm' },
  stepWidth: { least: 0.5, most: 10, unit: 'm' },
} as const satisfies Readonly<Record<string, NumberRange>>;
