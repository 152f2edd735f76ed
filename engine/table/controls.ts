import type { ControlInput } from '../world/descent.ts';
import type { Member, Table } from './table.ts';
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

/**
 * The input of the coming tick: what the people at the controls last commanded; where nobody is at a control, or was away
 * too long, what the stand-in commands.
 */
export function controlsNow(table: Table): ControlInput {
  const { run } = table;
  const flying = memberAt(table, 'flying');
  const tiltHeld = isAttended(table, flying);
  const thrustHeld = isAttended(table, memberAt(table, 'propellant') ?? flying);
  // the pilot is called every tick, so that what it remembers does not depend on who is away
  const standIn = run.pilot(run.flight);
  if (thrustHeld && tiltHeld) return run.commanded;
  return {
    thrustPercent: thrustHeld ? run.commanded.thrustPercent : standIn.thrustPercent,
    tiltDeg: tiltHeld ? run.commanded.tiltDeg : standIn.tiltDeg,
  };
}

export function memberAt(table: Table, seat: Seat): Member | undefined {
  return table.members.find((member) => member.seat === seat);
}

function isAttended(table: Table, member: Member | undefined): boolean {
  if (member === undefined) return false;
  return member.absentSince === undefined || table.tick - member.absentSince < STAND_IN_AFTER_TICKS;
}
