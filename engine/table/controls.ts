import type { ControlInput } from '../world/descent.ts';
import { paceNow } from './pace.ts';
import { memberAt, type Member, type TableState } from './tableState.ts';
import type { HeldControls, Seat } from './tableTypes.ts';

/**
 * How long the last command of a member whose line dropped stands before the stand-in covers the seat [ticks]. Three
 * seconds: a reload is shorter, so a member who reloads finds the controls as they were; longer would leave a descent of
 * under a minute unattended. Seconds of the clock on the wall: a descent at a slower pace has fewer ticks in them.
 */
export const STAND_IN_AFTER_TICKS = 180;

const NOTHING: HeldControls = { thrust: false, tilt: false };

/** Which controls a seat holds. By hand Flying holds both until a person takes Propellant, who then holds thrust; orders are Flying's alone. */
export function controlsOf(state: TableState, seat: Seat | undefined): HeldControls {
  if (seat !== 'flying' && seat !== 'propellant') return NOTHING;
  const thrustAtPropellant = state.orders === undefined && memberAt(state, 'propellant') !== undefined;
  return seat === 'flying' ? { thrust: !thrustAtPropellant, tilt: true } : { thrust: thrustAtPropellant, tilt: false };
}

/** Which controls a person is at: seated there, and not away for too long. The stand-in commands the others. */
export function attendedControls(state: TableState): HeldControls {
  const flying = memberAt(state, 'flying');
  const atThrust = state.orders === undefined ? (memberAt(state, 'propellant') ?? flying) : flying;
  return { thrust: isAttended(state, atThrust), tilt: isAttended(state, flying) };
}

/** The input of the coming tick: what was last commanded at the attended controls, what the stand-in commands at the others. */
export function controlsNow(commanded: ControlInput, standIn: ControlInput, attended: HeldControls): ControlInput {
  if (attended.thrust && attended.tilt) return commanded;
  return {
    thrustPercent: attended.thrust ? commanded.thrustPercent : standIn.thrustPercent,
    tiltDeg: attended.tilt ? commanded.tiltDeg : standIn.tiltDeg,
  };
}

export function isAttended(state: TableState, member: Member | undefined): boolean {
  if (member === undefined) return false;
  return member.absentSince === undefined || state.tick - member.absentSince < STAND_IN_AFTER_TICKS * paceNow(state);
}
