import { assert } from '../assert.ts';
import type { BodyPoint } from '../lander/index.ts';
import { cos, sin } from '../math/index.ts';
import { leastStaticTilt, standOn, type Standing } from '../statics/index.ts';
import type { OutsideCheck } from './outsideCheck.ts';
import { EQUALS_PRINTED } from './tolerances.ts';

const GEOMETRY = 'geometry of the regular polygon: distance to an edge is R cos(pi/n)';

/** Least static tilt on n equal legs round the center of mass. No world enters; the scaling checks say so. */
export const STATICS_CHECKS: readonly OutsideCheck[] = [
  ...[3, 4, 5, 6].map(tiltOfEqualLegs),
  edgeDistance(3, '0.5000'),
  edgeDistance(4, '0.7071'),
  edgeDistance(5, '0.8090'),
  edgeDistance(6, '0.8660'),
];

function tiltOfEqualLegs(count: number): OutsideCheck {
  return {
    ...EQUALS_PRINTED,
    name: `static tilt on ${count} legs, b/h 0.25`,
    source: GEOMETRY,
    kind: 'derived',
    seen: 'yes',
    expected: '14.0362',
    unit: 'deg',
    compute: () => {
      const radius = 0.25 / cos(Math.PI / count);
      return (leastStaticTilt(standOnEqualLegs(count, radius)).tilt * 180) / Math.PI;
    },
  };
}

function edgeDistance(count: number, expected: string): OutsideCheck {
  return {
    ...EQUALS_PRINTED,
    name: `distance to the edge on ${count} legs, over their radius`,
    source: GEOMETRY,
    kind: 'derived',
    seen: 'yes',
    expected,
    unit: '-',
    compute: () => leastStaticTilt(standOnEqualLegs(count, 1)).edge.distance,
  };
}

/** Center of mass 1 m up. The first leg stands at an odd azimuth, so that no foot falls on an axis. */
function standOnEqualLegs(count: number, radius: number): Standing {
  const soles = Array.from({ length: count }, (_, leg): BodyPoint => {
    const azimuth = 0.4 + (2 * Math.PI * leg) / count;
    return [radius * cos(azimuth), radius * sin(azimuth), 0];
  });
  const stance = standOn(soles, [0, 0, 1]);
  assert(stance.kind === 'stands', 'equal legs round the center of mass stand');
  return stance;
}
