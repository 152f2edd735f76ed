import { feetOf } from '../../engine/estimate/index.ts';
import { turned } from '../../engine/table/index.ts';
import type { DescentState } from '../../engine/world/index.ts';

/** Where the legs of a lander stand about its long axis, seen from above with the section's right to the right. */
export interface LegPlace {
  /** In the order of the lander, from 1. */
  readonly leg: number;
  /** From the center of mass: to the right, and toward the viewer of the section [m]. */
  readonly across: number;
  readonly aside: number;
  readonly isWeak: boolean;
}

export type Side = 'left' | 'right' | 'amid';

/** A leg nearer to the middle than this share of the half stance is on neither side [-]. */
const AMID = 0.25;

/** As they stand once the lander has turned on by so much, counter-clockwise [rad]; `locked` as the indications show. */
export function legPlaces(state: DescentState, locked: readonly boolean[], yaw = 0): readonly LegPlace[] {
  return feetOf(state).map((foot, index) => {
    const { across, aside } = turned(foot, yaw);
    return { leg: index + 1, across, aside, isWeak: locked[index] === false };
  });
}

export function sideOf({ across }: LegPlace, halfStance: number): Side {
  if (Math.abs(across) < AMID * halfStance) return 'amid';
  return across > 0 ? 'right' : 'left';
}

/** To which side the ground rises, where it does so by enough to be read. */
export function uphillOf(slope: number | undefined): 'left' | 'right' | undefined {
  if (slope === undefined || Math.abs(slope) < LEVEL) return undefined;
  return slope > 0 ? 'right' : 'left';
}

/** Slopes below this have no uphill worth a turn [rad]: 1 deg. */
const LEVEL = Math.PI / 180;
