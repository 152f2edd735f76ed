import { atan2 } from '../math/trig.ts';
import { staticTiltOf, type ContactCondition, type PivotBody } from '../pivot/tripLimit.ts';
import { contactCondition, contactLimit } from '../world/contactLimit.ts';
import type { DescentSetup, DescentState, TouchdownState } from '../world/descent.ts';
import { layOutSection } from '../world/layOutSection.ts';
import { contactMargin, pivotBodyAt } from './contactMargin.ts';
import type { Scorecard } from './tableTypes.ts';

/**
 * What the table says of a descent that is over. Limit and margin are those of the worst arrival, with the mass the
 * lander then had; the static tilt is that of the lander as it stands or lies now.
 */
export function scoreDescent(final: DescentState, setup: DescentSetup): Scorecard {
  const { outcome = 'stopped', touchdown, propellant } = final;
  const common = { outcome, strokeUsed: final.legs.map((leg) => leg.strokeUsed), propellantLeft: propellant };
  if (touchdown === undefined) return common;
  const section = layOutSection(setup.lander, setup.propellant);
  const body = pivotBodyAt(section, touchdown.mass);
  const { direction, ...margin } = contactMargin(body, setup.gravity, touchdown);
  const limit = staticTiltOf(pivotBodyAt(section, final.mass));
  const left = tiltLeft(final, direction);
  const staticTilt = { limit, used: limit - left, left };
  return { ...common, touchdown, ...margin, staticTilt };
}

/** The body and the condition from which the limit of a touchdown was computed, for whoever wants to compute it again. */
export function pivotAtTouchdown(
  setup: Pick<DescentSetup, 'lander' | 'propellant' | 'gravity'>,
  touchdown: TouchdownState,
): { readonly body: PivotBody; readonly condition: ContactCondition } {
  const body = pivotBodyAt(layOutSection(setup.lander, setup.propellant), touchdown.mass);
  const { direction } = contactLimit(body, setup.gravity, touchdown);
  return { body, condition: contactCondition(direction, setup.gravity, touchdown) };
}

/**
 * Angle by which the lander, as it is, may still turn toward a side until its center of mass stands above the foot on that
 * side [rad]; negative when it is past it.
 *
 *   left = atan2(d, z)                                 geometry, same as α = atan(b / h) for a lander on level ground
 *
 * d  foot ahead of the center of mass, toward that side [m]      z  center of mass above the foot [m]
 *
 * What slope, attitude and crushed legs took of the static tilt is therefore all in it.
 */
function tiltLeft(state: DescentState, direction: 1 | -1): number {
  const [first] = state.legs;
  if (first === undefined) return 0;
  const foot = state.legs.reduce((outer, leg) => (direction * (leg.footX - outer.footX) > 0 ? leg : outer), first);
  return atan2(direction * (foot.footX - state.x), state.y - foot.footY);
}
