import { sin } from '../math/trig.ts';
import { TICK_DT } from '../world/constants.ts';
import type { DescentSetup, DescentState, TouchdownState } from '../world/descent.ts';
import { layOutSection } from '../world/layOutSection.ts';
import { staticTiltOf } from '../pivot/tripLimit.ts';
import { contactMargin, pivotBodyAt } from './contactMargin.ts';
import type { LiveMargin } from './tableTypes.ts';

/**
 * A gauge of the margin if the lander met the ground now as it moves now: same speed, attitude and rate, on the slope
 * that is under its feet. Laid out once a descent; reading it is a few dozen operations.
 */
export function createMarginGauge(setup: DescentSetup): (state: DescentState) => LiveMargin {
  const section = layOutSection(setup.lander, setup.propellant);
  return (state) => {
    const body = pivotBodyAt(section, state.mass);
    const alpha = staticTiltOf(body);
    const direction = travelOf(state);
    const tiltLeft = alpha + direction * state.angle;
    // past either edge no speed is allowed, and the pivot formulas do not hold
    if (Math.abs(state.angle) >= alpha) return { ...NO_SPEED, speedMargin: -Math.abs(state.vx), tiltLeft };
    const contact = contactNow(state, body.halfStance);
    const margin = contactMargin(body, setup.gravity, contact);
    const { limit, speedMargin = -Math.abs(state.vx), utilisation = Infinity, callout } = margin;
    return { limit: Math.max(0, limit?.plastic ?? 0), speedMargin, utilisation, callout, tiltLeft };
  };
}

const NO_SPEED = { limit: 0, utilisation: Infinity, callout: 'outside' } as const;

/** A lander that comes straight down counts as traveling downhill, as in the trip limit. */
function travelOf({ vx, slope }: DescentState): 1 | -1 {
  if (vx !== 0) return vx > 0 ? 1 : -1;
  return slope > 0 ? -1 : 1;
}

function contactNow(state: DescentState, halfStance: number): TouchdownState {
  const { tick, x, vx, angle, rate, slope, mass } = state;
  const descentRate = Math.max(0, -state.vy);
  return { tick, x, vx, descentRate, angle, rate, slope, mass, firstFoot: firstFootNow(state, halfStance) };
}

/** Both feet meet the ground first when the second follows within one tick, which is how a contact is recorded. */
function firstFootNow({ angle, slope, vy }: DescentState, halfStance: number): TouchdownState['firstFoot'] {
  // how much higher above the ground the right foot is than the left [m]
  const higher = 2 * halfStance * sin(angle - slope);
  if (Math.abs(higher) <= Math.max(0, -vy) * TICK_DT) return 'both';
  return higher > 0 ? 'left' : 'right';
}
