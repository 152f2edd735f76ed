import {
  CALLOUTS,
  CONDUCTS,
  CUT_OFF_STATES,
  DRAWN_IN,
  FLIGHT_MODES,
  GROUND_NOTES,
  MARGIN_BANDS,
  NO_MARGINS,
  ORDERS,
  PACES,
  PLAN_FORMAT,
  ROLES,
  SEATS,
  SENSOR_TROUBLES,
  SPOT_APPROACHES,
  STAGES,
  type TableView,
} from '../../engine/table/index.ts';
import { ALERT_LEVELS, ROW_STATES } from '../../engine/drill/index.ts';
import { HELD_ACROSS } from '../../engine/descent/index.ts';
import { JUDGMENTS, SOURCE_STATES } from '../../engine/estimate/index.ts';
import { SENSOR_FAULT_KINDS, VEHICLE_FAULT_KINDS } from '../../engine/faults/index.ts';
import { SOURCES } from '../../engine/sensors/index.ts';
import { OUTCOMES, PHASES } from '../../engine/world/index.ts';
import { arrival, fork, judged, touchdown } from './cardShape.ts';
import { review } from './reviewShape.ts';
import { talk } from './talkShape.ts';
import { group, inline, list, number, optional, text, truth, words } from './shapes.ts';
import type { Disagreement, Exactly, ViewOf } from './viewOf.ts';

/**
 * What a member is shown, as it travels: the one declaration of `TableView` on the wire. A field that the view gains is one line here.
 *
 * Quantities of the engine travel as float64, so that a member reads the very bits that the authority computed, and two
 * scorecards are equal, not nearly equal.
 */

const quantity = number('float64');
const tick = number('uint32');
const count = number('uint32');

const holds = inline({ thrust: truth, tilt: truth });
const commanded = group({ thrustPercent: number('uint8'), tiltDeg: number('int8') });

const flight = group({
  tick,
  phase: words(PHASES),
  x: quantity,
  y: quantity,
  vx: quantity,
  vy: quantity,
  angle: quantity,
  rate: quantity,
  thrust: quantity,
  propellant: quantity,
  mass: quantity,
  height: quantity,
  slope: quantity,
  legs: list(
    group({
      footX: quantity,
      footY: quantity,
      footZ: quantity,
      inContact: truth,
      stroke: quantity,
      strokeUsed: quantity,
      usedUp: truth,
      load: quantity,
    }),
  ),
  commanded,
  touchdown: optional(group(touchdown)),
  contacts: list(arrival),
  outcome: optional(words(OUTCOMES)),
});

const margin = group({
  predicted: optional(
    group({
      limit: quantity,
      speedMargin: quantity,
      utilisation: quantity,
      band: words(MARGIN_BANDS),
      callout: words(CALLOUTS),
      x: quantity,
      seconds: quantity,
      descentRate: quantity,
      slope: quantity,
    }),
  ),
  without: optional(words(NO_MARGINS)),
  tiltLeft: quantity,
});

const scorecard = group({
  ...judged,
  belief: optional(
    group({ vx: quantity, descentRate: quantity, angle: quantity, height: quantity, utilisation: optional(quantity) }),
  ),
  failures: optional(
    list(
      group({
        source: words(SOURCES),
        kind: words(SENSOR_FAULT_KINDS),
        after: quantity,
        doubtedAfter: optional(quantity),
        namedAfter: optional(quantity),
      }),
    ),
  ),
  defects: optional(
    list(
      group({
        kind: words(VEHICLE_FAULT_KINDS),
        leg: optional(count),
        after: quantity,
        answeredAfter: optional(quantity),
      }),
    ),
  ),
  crew: list(group({ seat: words(SEATS), name: text })),
});

const source = group({
  source: words(SOURCES),
  state: words(SOURCE_STATES),
  judgment: words(JUDGMENTS),
  isUsed: truth,
  age: optional(quantity),
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

export const tableShape = group({
  stage: words(STAGES),
  held: truth,
  aborting: truth,
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
  seats: list(group({ seat: words(SEATS), name: optional(text), connected: truth, holds })),
  watching: list(text),
  conduct: words(CONDUCTS),
  stoppedBy: optional(text),
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
  drill: optional(
    group({
      id: text,
      title: text,
      brief: list(text),
      objectives: list(group({ id: text, text })),
      ruleCard: list(group({ id: text, text })),
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
  engine: group({
    ceilingPercent: number('uint8'),
    cutOff: words(CUT_OFF_STATES),
    cutAtContact: truth,
    lineShut: truth,
  }),
  site: group({
    spot: optional(group({ meters: number('int32'), approach: words(SPOT_APPROACHES) })),
    ground: words(GROUND_NOTES),
    limitHundredths: optional(number('uint16')),
  }),
  named: list(group({ source: words(SOURCES), cause: words(SENSOR_FAULT_KINDS) })),
  aligning: optional(quantity),
  startingIn: optional(quantity),
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
  drawnIn: words(DRAWN_IN),
  map: optional(group({ firstX: quantity, spacing: quantity, heights: list(number('float64')), sigma: quantity })),
  spread: optional(group({ x: quantity, height: quantity, vx: quantity, vy: quantity, angle: quantity })),
  rejected: list(words(SOURCES)),
  sources: optional(list(source)),
  commanded,
  orders: optional(
    group({
      descentRateTenths: number('int8'),
      across: words(HELD_ACROSS),
      driftTenths: number('int8'),
      leanDeg: number('int8'),
    }),
  ),
  pace: words(PACES),
  talk,
  review: optional(review),
  flight,
  margin,
  scorecard: optional(scorecard),
  fork: optional(fork),
});

/** Does not compile unless the declaration above is exactly the view of the engine; the error names the field. */
export type IsDeclared = Exactly<Disagreement<ViewOf<typeof tableShape>, TableView>>;
