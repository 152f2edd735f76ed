import type { ControlInput } from '../world/descent.ts';
import { isAttended } from './attendance.ts';
import { memberAt, type TableState } from './tableState.ts';
import type { HeldControls } from './viewTypes.ts';
import type { Seat } from './tableTypes.ts';

/**
 * Which controls a seat holds: Flying both. By orders `thrust` is the order of the descent rate, `tilt` that of what is held across the ground.
 */
export function controlsOf(seat: Seat | undefined): HeldControls {
  return { thrust: seat === 'flying', tilt: seat === 'flying' };
}

/** Which controls a person is at. The stand-in commands the others. */
export function attendedControls(state: TableState): HeldControls {
  const isFlown = isAttended(state, memberAt(state, 'flying'));
  return { thrust: isFlown, tilt: isFlown };
}

/** The input of the coming tick: what was last commanded at the attended controls, what the stand-in commands at the others. */
export function controlsNow(commanded: ControlInput, standIn: ControlInput, attended: HeldControls): ControlInput {
  return attended.thrust && attended.tilt ? commanded : standIn;
}
