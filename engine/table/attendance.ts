import { paceNow } from './pace.ts';
import { memberAt, type Member, type TableState } from './tableState.ts';
import { SEATS, type Seat } from './tableTypes.ts';

/**
 * How long the last command of a member whose line dropped stands before the stand-in covers the seat [ticks]. Three
 * seconds: a reload is shorter, so a member who reloads finds the controls as they were; longer would leave a descent of
 * under a minute unattended. Seconds of the clock on the wall: a descent at a slower pace has fewer ticks in them.
 */
export const STAND_IN_AFTER_TICKS = 180;

/** Whether a person is at the seat: there, and not away for too long. */
function isAttended(state: TableState, member: Member | undefined): boolean {
  if (member === undefined) return false;
  return member.absentSince === undefined || state.tick - member.absentSince < STAND_IN_AFTER_TICKS * paceNow(state);
}

/** Whether the stand-in covers this seat: nobody is at it. */
export function isCovered(state: TableState, seat: Seat): boolean {
  return !isAttended(state, memberAt(state, seat));
}

/** Whose word ends or repeats a descent and sets its pace: whoever sits first in the order of the seats, and is not away for long. */
export function decider(state: TableState): Member | undefined {
  const sitters = SEATS.flatMap((seat) => memberAt(state, seat) ?? []);
  return sitters.find((sitter) => isAttended(state, sitter)) ?? sitters[0];
}
