import { shortAngle } from '../../engine/figures.ts';
import type { Lander } from '../../engine/lander/index.ts';
import { criticalAzimuths } from '../../engine/touchdown/index.ts';
import { toAzimuthDeg } from '../../engine/math/index.ts';

/** Yaws at which a lander travels square to an edge, along a foot, and half way between, rising from 0 [deg]. */
export function criticalYaws(lander: Lander, missing: readonly number[]): readonly number[] {
  return criticalAzimuths(lander, missing)
    .map((azimuth) => toAzimuthDeg(0 - azimuth))
    .toSorted((a, b) => a - b);
}

/** Yaws within this of each other are one [deg]: a limit by simulation changes little over it. */
const NEAR_DEG = 2;

/** Critical yaws that have none of `yaws` beside them [deg]. */
export function missedYaws(lander: Lander, missing: readonly number[], yaws: readonly number[]): readonly number[] {
  return criticalYaws(lander, missing).filter((critical) =>
    yaws.every((yaw) => {
      const apart = Math.abs(yaw - critical) % 360;
      return Math.min(apart, 360 - apart) > NEAR_DEG;
    }),
  );
}

/** A line where yaws were missed, none where not. */
export function warnOfMissed(missed: readonly number[]): readonly string[] {
  if (missed.length === 0) return [];
  const shown = missed.slice(0, 6).map(shortAngle).join(', ');
  const more = missed.length > 6 ? ' and others' : '';
  return [
    `Warning: too few yaws to see the worst. None is near ${shown}${more} deg, square to an edge, along a foot or half way between: --yaws all looks at each.`,
  ];
}
