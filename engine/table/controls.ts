import type { HeldControls } from './viewTypes.ts';
import type { Seat } from './tableTypes.ts';

/**
 * Which controls a seat holds: Flying both. By orders `thrust` is the order of the descent rate, `tilt` that of what is held across the ground.
 */
export function controlsOf(seat: Seat | undefined): HeldControls {
  return { thrust: seat === 'flying', tilt: seat === 'flying' };
}
