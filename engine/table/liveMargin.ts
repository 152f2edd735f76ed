import { staticTiltOf } from '../pivot/tripLimit.ts';
import type { DescentState } from '../world/descent.ts';
import { layOutSection } from '../world/layOutSection.ts';
import { pivotBodyAt, travelOf } from './closedForm.ts';
import { leastLimit, type BeyondTable, type LimitTable, type Span } from './limitTable.ts';
import { bandOf, calloutOf } from './marginBand.ts';
import { predictContact, type PredictedContact } from './predictContact.ts';
import type { LiveMargin, NoMargin, PredictedMargin, TablePlan } from './tableTypes.ts';

/**
 * A gauge of the margin at the contact that is coming: where the lander will meet the ground, how fast, on which slope, at the attitude that it has or is
 * told to take, against the table of limits that the plan brings. Laid out once a descent; reading it simulates nothing.
 */
export function createMarginGauge({ setup, limits }: TablePlan): (state: DescentState) => LiveMargin {
  const section = layOutSection(setup.lander, setup.propellant);
  return (state) => {
    const tiltLeft = staticTiltOf(pivotBodyAt(section, state.mass)) + travelOf(state) * state.angle;
    const read = isDown(state) ? 'on the ground' : predict(state);
    return typeof read === 'string' ? { without: read, tiltLeft } : { predicted: read, tiltLeft };
  };

  function predict(state: DescentState): PredictedMargin | NoMargin {
    if (limits === undefined) return 'no table';
    const contact = predictContact(setup, section.halfStance, state);
    return typeof contact === 'string' ? contact : marginAt(limits, state, contact);
  }
}

const BEYOND: Readonly<Record<BeyondTable, NoMargin>> = {
  slope: 'too steep',
  descentRate: 'too fast',
  lean: 'turned too far',
  mass: 'no table',
};

function marginAt(table: LimitTable, state: DescentState, contact: PredictedContact): PredictedMargin | NoMargin {
  const { x, seconds, descentRate, slope, slopes } = contact;
  const direction = travelOf({ vx: state.vx, slope });
  const told = (state.commanded.tiltDeg * Math.PI) / 180;
  const limit = leastLimit(table, {
    slope: toward(direction, slopes),
    descentRate: [descentRate, descentRate],
    lean: toward(direction, [Math.min(state.angle, told), Math.max(state.angle, told)]),
    mass: [state.mass, state.mass],
  });
  if (typeof limit === 'string') return BEYOND[limit];
  const speed = Math.abs(state.vx);
  const utilisation = limit > 0 ? speed / limit : Infinity;
  const band = bandOf(utilisation);
  const margin = { limit, speedMargin: limit - speed, utilisation, band, callout: calloutOf(band) };
  return { ...margin, x, seconds, descentRate, slope };
}

/** Counter-clockwise angles as falls, or leans, toward the travel. */
function toward(direction: 1 | -1, [least, most]: Span): Span {
  return direction === 1 ? [-most, -least] : [least, most];
}

function isDown({ phase }: DescentState): boolean {
  return phase === 'contact' || phase === 'settling' || phase === 'at rest';
}
