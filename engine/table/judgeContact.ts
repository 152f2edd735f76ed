import { checkTouchdown } from '../touchdown/checkTouchdown.ts';
import { prepareTouchdown } from '../touchdown/prepareTouchdown.ts';
import { tipLimit } from '../touchdown/tipLimit.ts';
import type { Arrival, DescentSetup, Outcome, TouchdownState } from '../world/descent.ts';
import { closedFormAt } from './closedForm.ts';
import { bandOf, calloutOf } from './marginBand.ts';
import { arrivalCase } from './simulateArrival.ts';
import type { ArrivalLimit, CardOutcome, JudgedContact, MarginBand } from './scorecardTypes.ts';

/** Holds one contact against the tip limit of that very arrival. Takes a tenth of a second or so: nothing for a frame that is to be drawn in time. */
export function judgeContact(setup: DescentSetup, arrival: Arrival): JudgedContact {
  const limit = limitOfArrival(setup, arrival);
  if (limit === undefined) return { arrival, band: 'outside', callout: 'outside' };
  const speed = Math.abs(arrival.vx);
  const reach = limit.tip ?? limit.upTo;
  const band: MarginBand = reach > 0 ? bandOf(speed / reach) : 'outside';
  return {
    arrival,
    limit,
    speedMargin: reach - speed,
    ...(limit.tip !== undefined && limit.tip > 0 && { utilisation: speed / limit.tip }),
    band,
    callout: calloutOf(band),
  };
}

/** The tip limit of one arrival by simulation; undefined for one beyond what the simulation takes. */
export function limitOfArrival(setup: DescentSetup, arrival: TouchdownState): ArrivalLimit | undefined {
  const touchdown = arrivalCase(setup, arrival);
  const prepared = prepareTouchdown(touchdown.lander);
  if (!prepared.ok || checkTouchdown(touchdown.lander, touchdown, {}).length > 0) return undefined;
  const usual = tipLimit(prepared.value, touchdown);
  const speed = Math.abs(arrival.vx);
  // an arrival faster than is usually looked at is looked at up to its own speed
  const isBeyond = usual.speed === undefined && speed > usual.upTo;
  const found = isBeyond ? tipLimit(prepared.value, touchdown, { upTo: speed }) : usual;
  const { tolerance, upTo, friction, first } = found;
  return {
    ...(found.speed !== undefined && { tip: found.speed }),
    tolerance,
    upTo,
    friction,
    ...(found.gearSpeed !== undefined && { gear: found.gearSpeed }),
    first,
    closedForm: closedFormAt(setup, arrival),
  };
}

/** The word of the card for how a descent ended: of one that stands, whether its worst contact was inside the tip limit. */
export function cardOutcome(outcome: Outcome, worst: Pick<JudgedContact, 'band'> | undefined): CardOutcome {
  if (outcome !== 'upright') return outcome;
  return worst === undefined || worst.band === 'outside' ? 'upright outside limit' : 'upright inside limit';
}
