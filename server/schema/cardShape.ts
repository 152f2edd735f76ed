import { CHANGE_KINDS, CALLOUTS, CARD_OUTCOMES, MARGIN_BANDS } from '../../engine/table/index.ts';
import { VEHICLE_PARTS } from '../../engine/faults/index.ts';
import { SOURCES } from '../../engine/sensors/index.ts';
import { FIRST_LIMITS } from '../../engine/touchdown/index.ts';
import { BETWEEN_CONTACTS } from '../../engine/world/index.ts';
import { group, list, number, optional, text, words } from './shapes.ts';

/** What is judged of a descent, and of one that was flown again, as it travels. */

const quantity = number('float64');
const count = number('uint32');
const tick = number('uint32');

export const touchdown = {
  tick,
  x: quantity,
  vx: quantity,
  descentRate: quantity,
  angle: quantity,
  rate: quantity,
  slope: quantity,
  mass: quantity,
  firstFoot: words(['left', 'right', 'both']),
  facing: optional(number('int8')),
} as const;
export const arrival = group({ ...touchdown, after: words(BETWEEN_CONTACTS) });

const limit = group({
  tip: optional(quantity),
  tolerance: quantity,
  upTo: quantity,
  friction: quantity,
  gear: optional(quantity),
  first: words(FIRST_LIMITS),
  closedForm: quantity,
});

export const judged = {
  outcome: words(CARD_OUTCOMES),
  contacts: list(
    group({
      arrival,
      limit: optional(limit),
      speedMargin: optional(quantity),
      utilisation: optional(quantity),
      band: words(MARGIN_BANDS),
      callout: words(CALLOUTS),
    }),
  ),
  contactCount: count,
  worst: optional(count),
  staticTilt: optional(group({ limit: quantity, used: quantity, left: quantity })),
  restTilt: quantity,
  strokeUsed: list(quantity),
  propellantLeft: quantity,
  physics: number('uint32'),
} as const;

export const change = group({
  kind: words(CHANGE_KINDS),
  source: optional(words(SOURCES)),
  part: optional(words(VEHICLE_PARTS)),
  seconds: optional(quantity),
  tenths: optional(quantity),
  world: optional(text),
  percent: optional(quantity),
});

const path = group({
  spacing: quantity,
  heights: list(quantity),
  speeds: list(quantity),
  contact: optional(group({ after: quantity, speed: quantity })),
});

export const fork = group({
  change,
  after: quantity,
  card: group(judged),
  last: group({ angle: quantity, vx: quantity, vy: quantity }),
  happened: path,
  forked: path,
});
