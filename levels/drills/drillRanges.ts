import type { DocumentBudget } from '../../engine/documentText.ts';
import type { StateQuantity } from '../../engine/drill/index.ts';
import type { NumberRange, TextRule } from '../../engine/fieldReader.ts';

/** What a drill file may say; the published schema repeats these numbers. */

export const DRILL_BUDGET: DocumentBudget = { mostBytes: 128 * 1024, deepest: 12 };

const ID = { least: 1, most: 32, pattern: /^[a-z][a-z0-9-]*$/, words: 'a to z first, then a to z, 0 to 9 and -' };
const WORDS = { pattern: /^[^\p{C}\p{Zl}\p{Zp}]+$/u, words: 'one line, no control characters' };

export const DRILL_ID = ID;

export const TEXTS = {
  id: ID,
  title: { least: 1, most: 60, ...WORDS },
  sentence: { least: 1, most: 240, ...WORDS },
  paragraph: { least: 1, most: 800, ...WORDS },
} as const satisfies Readonly<Record<string, TextRule>>;

export const RANGES = {
  level: { least: 1, most: 4, unit: '-', whole: true },
  minutes: { least: 1, most: 240, unit: 'min', whole: true },
  seed: { least: 0, most: Number.MAX_SAFE_INTEGER, unit: '-', whole: true },
  steeperDeg: { least: 0, most: 10, unit: 'deg' },
  /** Since the start of the descent, or since another inject. */
  seconds: { least: 0, most: 3600, unit: 's' },
  /** How long something fails, or a response may take. */
  span: { least: 0.1, most: 3600, unit: 's' },
  meters: { least: 0, most: 1000, unit: 'm' },
  rate: { least: 0.1, most: 6, unit: 'm/s' },
} as const satisfies Readonly<Record<string, NumberRange>>;

/** Between which a trigger can wait for a quantity. */
export const STATE_RANGES: Readonly<Record<StateQuantity, NumberRange>> = {
  descentRate: { least: -50, most: 50, unit: 'm/s' },
  drift: { least: 0, most: 50, unit: 'm/s' },
  leanDeg: { least: 0, most: 180, unit: 'deg' },
  propellantSeconds: { least: 0, most: 3600, unit: 's' },
  sinceContact: { least: 0, most: 3600, unit: 's' },
};

export const COUNTS = {
  paragraphs: { least: 1, most: 8, of: 'paragraphs' },
  objectives: { least: 1, most: 3, of: 'objectives' },
  rules: { least: 1, most: 8, of: 'rules' },
  rates: { least: 1, most: 6, of: 'descent rates' },
  courses: { least: 2, most: 6, of: 'courses' },
  events: { least: 0, most: 40, of: 'injects' },
  effects: { least: 1, most: 8, of: 'effects' },
  displays: { least: 1, most: 6, of: 'displays' },
  responses: { least: 1, most: 8, of: 'responses' },
  judgments: { least: 1, most: 3, of: 'judgments' },
  faults: { least: 0, most: 8, of: 'faults' },
  questions: { least: 1, most: 12, of: 'questions' },
} as const;
