import {
  createEstimate,
  type Estimate,
  type EstimateSetup,
  type MapGround,
  type MotionFigures,
} from '../../engine/estimate/index.ts';
import { createReadings, type Readings, type Source } from '../../engine/sensors/index.ts';
import { MOON } from './dropLander.ts';
import { LEVEL } from './kinematicTruth.ts';

/** A map of level ground that is right. */
export const TRUE_MAP: MapGround = { terrain: LEVEL, sigma: 0, correlation: 10 };

/** A start that is known all but exactly: what is left must come from elsewhere. */
export const KNOWN: MotionFigures = { x: 1e-9, height: 1e-9, vx: 1e-9, vy: 1e-9, angle: 1e-9 };

/** At rest in the air, 50 m up. */
export const HOVER: MotionFigures = { x: 0, height: 50, vx: 0, vy: 0, angle: 0 };

export function plainEstimate(change: Partial<EstimateSetup> = {}): Estimate {
  return createEstimate({ gravity: MOON, map: TRUE_MAP, feet: [], start: HOVER, startSigma: KNOWN, ...change });
}

/** Readings in which nothing has come but what is said. */
export function readingsOf(reports: Partial<Record<Source, readonly number[]>>, tick: number): Readings {
  const readings = createReadings(4);
  for (const [source, values] of Object.entries(reports) as [Source, readonly number[]][])
    Object.assign(readings[source], { arrivedTick: tick, isValid: true, hasLock: true, values: [...values] });
  return readings;
}
