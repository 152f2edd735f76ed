import { HELD_ACROSS } from '../../engine/descent/index.ts';
import { SENSOR_FAULT_KINDS, VEHICLE_FAULT_KINDS } from '../../engine/faults/index.ts';
import { SOURCES } from '../../engine/sensors/index.ts';
import {
  CALLOUTS,
  CONDUCTS,
  CUT_OFF_STATES,
  DRAWN_IN,
  GROUND_NOTES,
  MARGIN_BANDS,
  NO_MARGINS,
  PACES,
  SEATS,
  SPOT_APPROACHES,
  STAGES,
  type CommonView,
} from '../../engine/table/index.ts';
import { fork, judged } from './cardShape.ts';
import { commanded, flight } from './flightShape.ts';
import { group, inline, list, number, optional, text, truth, words } from './shapes.ts';
import type { Disagreement, Exactly, ViewOf } from './viewOf.ts';

/**
 * What everybody at a table is shown alike, as it travels: the one declaration of `CommonView` on the wire. A field that the view gains is one line here.
 *
 * Quantities of the engine travel as float64, so that a member reads the very bits that the authority computed, and two
 * scorecards are equal, not nearly equal.
 */

const quantity = number('float64');
const count = number('uint32');

const holds = inline({ thrust: truth, tilt: truth });

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
  facing: optional(group({ steps: number('int8'), orderedAfter: quantity, doneAfter: optional(quantity) })),
  crew: list(group({ seat: words(SEATS), name: text })),
});

export const commonShape = group({
  stage: words(STAGES),
  held: truth,
  locked: truth,
  aborting: truth,
  seats: list(group({ seat: words(SEATS), name: optional(text), connected: truth, holds })),
  conduct: words(CONDUCTS),
  stoppedBy: optional(text),
  drill: optional(
    group({
      id: text,
      title: text,
      brief: list(text),
      objectives: list(group({ id: text, text })),
      ruleCard: list(group({ id: text, text })),
      profile: list(group({ above: quantity, rate: quantity })),
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
    facing: optional(number('int8')),
  }),
  named: list(group({ source: words(SOURCES), cause: words(SENSOR_FAULT_KINDS) })),
  aligning: optional(quantity),
  startingIn: optional(quantity),
  drawnIn: words(DRAWN_IN),
  map: optional(group({ firstX: quantity, spacing: quantity, heights: list(number('float64')), sigma: quantity })),
  spread: optional(group({ x: quantity, height: quantity, vx: quantity, vy: quantity, angle: quantity })),
  rejected: list(words(SOURCES)),
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
  flight,
  margin,
  scorecard: optional(scorecard),
  fork: optional(fork),
});

/** Does not compile unless the declaration above is exactly the view of the engine; the error names the field. */
export type IsCommonDeclared = Exactly<Disagreement<ViewOf<typeof commonShape>, CommonView>>;
