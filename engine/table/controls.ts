import type { ControlInput } from '../world/descent.ts';
import type { Member, Run, Table } from './table.ts';
import type { HeldControls, Seat } from './tableTypes.ts';

/**
 * How long the last command of a member whose line dropped stands before the stand-in covers the seat [ticks]. Three
 * seconds: a reload is shorter, so a member who reloads finds the controls as they were; longer would leave a descent of
 * under a minute unattended.
 */
export const STAND_IN_AFTER_TICKS = 180;

const NOTHING: HeldControls = { thrust: false, tilt: false };

/** Which controls a seat holds. Flying holds both until a person takes Propellant, who then holds thrust. */
export function controlsOf(table: Table, seat: Seat | undefined): HeldControls {
  if (seat !== 'flying' && seat !== 'propellant') return NOTHING;
  const thrustAtPropellant = memberAt(table, 'propellant') !== undefined;
  return seat === 'flying' ? { thrust: !thrustAtPropellant, tilt: true } : { thrust: thrustAtPropellant, tilt: false };
}

/** Which controls a person is at: seated there, and not away for too long. The stand-in commands the others. */
export function attendedControls(table: Table): HeldControls {
  const flying = memberAt(table, 'flying');
  return {
    thrust: isAttended(table, memberAt(table, 'propellant') ?? flying),
    tilt: isAttended(table, flying),
  };
}

/** The input of the coming tick: what was last commanded at the attended controls, what the stand-in commands at the others. */
export function controlsNow(run: Run, attended: HeldControls): ControlInput {
  // the pilot is called every tick, so that what it remembers does not depend on who is away
  const standIn = run.pilot(run.flight);
  if (attended.thrust && attended.tilt) return run.commanded;
  return {
    thrustPercent: attended.thrust ? run.commanded.thrustPercent : standIn.thrustPercent,
    tiltDeg: attended.tilt ? run.commanded.tiltDeg : standIn.tiltDeg,
  };
}

export function memberAt(table: Table, seat: Seat): Member | undefined {
  return table.members.find((member) => member.seat === seat);
}

function isAttended(table: Table, member: Member | undefined): boolean {
  if (member === undefined) return false;
  return member.absentSince === undefined || table.tick - member.absentSince < STAND_IN_AFTER_TICKS;
}
