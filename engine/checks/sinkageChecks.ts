import { bekkerSinkage } from '../touchdown/index.ts';
import type { OutsideCheck } from './outsideCheck.ts';
import { AT_MOST, WITHIN } from './tolerances.ts';

/** After [LSB1991]. */
const LUNAR_SOIL = { cohesive: 1400, frictional: 820_000, exponent: 1 };

/** How far a footpad sinks into soil, and what the soil bears. */
export const SINKAGE_CHECKS: readonly OutsideCheck[] = [
  {
    ...WITHIN,
    name: 'sinkage of a footpad in lunar soil',
    source: 'NASA SP-214, 1969, sinkage of footpads [SP214]; soil constants after Lunar Sourcebook 1991 [LSB1991]',
    kind: 'measured',
    seen: 'no',
    expected: '0.025 to 0.076',
    unit: 'm',
    note: '20.0 kN on 0.6875 m^2; k_c 1.4 kN/m^2, k_phi 820 kN/m^3, n 1, for which the Lunar Sourcebook gives some 35 mm',
    compute: () => bekkerSinkage(20_000, 2 * Math.sqrt(0.6875 / Math.PI), LUNAR_SOIL),
  },
  {
    ...AT_MOST,
    name: 'bearing strength of lunar soil from 2 to 5 cm deep: largest factor between measured and ours',
    source: 'soft-landing soil papers, J. Geophys. Res. 1968, 1969 [JGR1969]',
    kind: 'measured',
    seen: 'abstract',
    expected: '2',
    unit: '-',
    note: 'measured 2 to 6 N/cm^2 from 2 to 5 cm, bearing diameters of 20 to 30 cm, taken as a straight line; 0.25 m here; the factor of 2 is our allowance',
    compute: () => Math.max(...DEPTHS.map((depth) => factorBetween(bearingStrength(depth), measuredStrength(depth)))),
  },
];

/** [m] */
const DEPTHS = [0.02, 0.03, 0.04, 0.05];

/** From 2 N/cm^2 at 2 cm to 6 N/cm^2 at 5 cm [Pa]. */
function measuredStrength(depth: number): number {
  return 20_000 + (40_000 * (depth - 0.02)) / 0.03;
}

/** Pressure at which the pad stands at a depth, by halving: the sinkage grows with the force [Pa]. */
function bearingStrength(depth: number): number {
  const diameter = 0.25;
  let [low, high] = [0, 1e6];
  for (let turn = 0; turn < 40; turn++) {
    const force = (low + high) / 2;
    if (bekkerSinkage(force, diameter, LUNAR_SOIL) < depth) low = force;
    else high = force;
  }
  return high / ((Math.PI / 4) * diameter * diameter);
}

function factorBetween(one: number, other: number): number {
  return Math.max(one / other, other / one);
}
