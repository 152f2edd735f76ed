import type { TouchdownResult } from '../../engine/touchdown/index.ts';
import { toAzimuthDeg } from '../../engine/math/index.ts';
import type { Report } from './report.ts';

/** A touchdown for machines; `travelAzimuth` is the direction from which its azimuths count, in the frame of the ground [rad]. */
export function touchdownResults(result: TouchdownResult, travelAzimuth = 0): Report['results'] {
  const { leastMargin, clearance, tiltAzimuth, outcome, limitsHit, strokes, strokesUsed, peakLoads, sinkages } = result;
  const { lateralUsed, peakAcceleration, slide, restTiltDeg, time, firstContact, steps, step } = result;
  return {
    outcome,
    limitsHit,
    leastMargin: leastMargin.value,
    leastMarginTime: leastMargin.time,
    strokes,
    strokesUsed,
    lateralUsed,
    peakLoads,
    sinkages,
    peakAcceleration,
    // there are landers without hull points
    clearance: Number.isFinite(clearance) ? clearance : null,
    slide,
    restTiltDeg,
    tiltAzimuthDeg: toAzimuthDeg(tiltAzimuth - travelAzimuth),
    time,
    firstContact,
    steps,
    step,
    unsettledReturns: result.unsettledReturns,
  };
}
