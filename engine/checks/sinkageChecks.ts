import { bekkerSinkage } from '../touchdown/index.ts';
import type { OutsideCheck } from './outsideCheck.ts';
import { AT_LEAST, AT_MOST } from './tolerances.ts';

const FOOTPADS = 'NASA SP-214, 1969, sinkage of footpads [SP214]; soil constants after Lunar Sourcebook 1991 [LSB1991]';

/** How far a footpad sinks into soil. */
export const SINKAGE_CHECKS: readonly OutsideCheck[] = [
  {
    ...AT_LEAST,
    name: 'sinkage of a footpad in lunar soil, against the least observed',
    source: FOOTPADS,
    kind: 'measurement',
    seen: false,
    expected: '0.025',
    unit: 'm',
    note: '20.0 kN on 0.6875 m^2; k_c 1.4 kN/m^2, k_phi 820 kN/m^3, n 1, for which the Lunar Sourcebook gives some 35 mm',
    compute: lunarSinkage,
  },
  {
    ...AT_MOST,
    name: 'sinkage of a footpad in lunar soil, against the most observed',
    source: FOOTPADS,
    kind: 'measurement',
    seen: false,
    expected: '0.076',
    unit: 'm',
    compute: lunarSinkage,
  },
];

function lunarSinkage(): number {
  const soil = { cohesive: 1400, frictional: 820_000, exponent: 1 };
  return bekkerSinkage(20_000, 2 * Math.sqrt(0.6875 / Math.PI), soil);
}
