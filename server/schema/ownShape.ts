import { ALERT_LEVELS, ROW_STATES } from '../../engine/drill/index.ts';
import { JUDGMENTS, SOURCE_STATES } from '../../engine/estimate/index.ts';
import { SOURCES } from '../../engine/sensors/index.ts';
import {
  FLIGHT_MODES,
  ORDERS,
  PACES,
  PLAN_FORMAT,
  ROLES,
  SEATS,
  SENSOR_TROUBLES,
  type OwnView,
} from '../../engine/table/index.ts';
import { flight } from './flightShape.ts';
import { review } from './reviewShape.ts';
import { group, inline, list, number, optional, text, truth, words } from './shapes.ts';
import { talk } from './talkShape.ts';
import type { Disagreement, Exactly, ViewOf } from './viewOf.ts';

/** What only one member is shown, as it travels: the one declaration of `OwnView` on the wire. */

const quantity = number('float64');

const holds = inline({ thrust: truth, tilt: truth });

const source = group({
  source: words(SOURCES),
  state: words(SOURCE_STATES),
  judgment: words(JUDGMENTS),
  isUsed: truth,
  age: optional(quantity),
  usedAge: optional(quantity),
  values: list(quantity),
  disagreement: optional(quantity),
});

const propellantReadings = group({
  gauge: optional(quantity),
  gaugeState: words(SOURCE_STATES),
  gaugeAge: optional(quantity),
  reckoned: quantity,
  seconds: quantity,
  felt: optional(quantity),
  burns: truth,
  swing: optional(group({ radius: quantity, now: quantity, rise: quantity, period: quantity, shift: quantity })),
});

const siteReadings = group({
  locked: list(truth),
  legsState: words(SOURCE_STATES),
  legsAge: optional(quantity),
  limitLeft: optional(quantity),
  limitRight: optional(quantity),
  slope: optional(quantity),
  slopeLeast: optional(quantity),
  slopeMost: optional(quantity),
});

const choice = group({
  format: words<typeof PLAN_FORMAT>([PLAN_FORMAT]),
  lander: text,
  site: text,
  world: text,
  seed: quantity,
  start: text,
  mode: words(FLIGHT_MODES),
  pace: words(PACES),
  sensorTrouble: words(SENSOR_TROUBLES),
  drill: optional(text),
});

export const ownShape = group({
  you: inline({
    id: text,
    name: text,
    role: words(ROLES),
    ready: truth,
    seat: optional(words(SEATS)),
    holds,
    mayTakeSeat: truth,
    decides: truth,
    runs: truth,
    standInLeft: optional(holds),
  }),
  watching: list(text),
  turn: optional(
    group({
      laying: truth,
      awaited: list(words(SEATS)),
      own: list(
        group({
          order: words(ORDERS),
          source: optional(words(SOURCES)),
          figure: optional(quantity),
          word: optional(text),
        }),
      ),
      left: optional(quantity),
    }),
  ),
  dealt: list(group({ text, level: optional(words(ALERT_LEVELS)), after: quantity })),
  control: optional(
    group({
      truth: flight,
      course: optional(text),
      rows: list(
        group({
          id: text,
          state: words(ROW_STATES),
          sentAfter: optional(quantity),
          sentHeight: optional(quantity),
          dueIn: optional(quantity),
          seen: list(group({ response: text, after: quantity })),
        }),
      ),
    }),
  ),
  propellantReadings: optional(propellantReadings),
  siteReadings: optional(siteReadings),
  leadReadings: optional(group({ odds: optional(quantity) })),
  others: list(
    group({
      id: text,
      name: text,
      role: words(ROLES),
      ready: truth,
      connected: truth,
      seat: optional(words(SEATS)),
    }),
  ),
  waiting: list(group({ id: text, name: text })),
  plan: group({ title: text, landerId: text, siteId: text, worldId: text, seed: quantity, choice }),
  sources: optional(list(source)),
  talk,
  review: optional(review),
});

/** Does not compile unless the declaration above is exactly the view of the engine; the error names the field. */
export type IsOwnDeclared = Exactly<Disagreement<ViewOf<typeof ownShape>, OwnView>>;
