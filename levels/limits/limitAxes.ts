import { massRange, type Lander } from '../../engine/lander/index.ts';
import type { LimitTable } from '../../engine/table/index.ts';

/**
 * For which contacts the shipped tables of limits have entries: fall of the ground along the travel [deg], descent rate [m/s], lean toward the travel
 * [deg], and share of the propellant aboard [-]. Closer where limits change faster; up to what the plans let a crew meet.
 */
const LIMIT_AXES = {
  slopesDeg: [-10, -5, -2, 0, 2, 4, 6, 8, 10, 12],
  descentRates: [0.1, 0.5, 1, 1.5, 2, 2.5, 3.5],
  leansDeg: [-6, -3, 0, 3, 6],
  shares: [0, 0.5, 1],
} as const;

/** The axes of the table of one lander. */
export function limitAxes(lander: Lander): Omit<LimitTable, 'limits'> {
  return {
    slopes: LIMIT_AXES.slopesDeg.map(radians),
    descentRates: LIMIT_AXES.descentRates,
    leans: LIMIT_AXES.leansDeg.map(radians),
    masses: massesOf(lander),
  };
}

/** The masses of a lander for which its tables have entries [kg]. */
function massesOf(lander: Lander): readonly number[] {
  const { empty, full } = massRange(lander);
  return LIMIT_AXES.shares.map((share) => empty + share * (full - empty));
}

function radians(degrees: number): number {
  return (degrees * Math.PI) / 180;
}
