import { arrivalOdds, type EstimateView, type SideLimit } from '../estimate/index.ts';
import type { DescentState } from '../world/descent.ts';
import { interpolateLimit } from './interpolateLimit.ts';
import type { LimitTable } from './limitTable.ts';
import type { PredictedContact } from './predictContact.ts';

/** How far the limit between two entries of a table is off [m/s]: root mean square, see engine/estimate/README.md. */
const LIMIT_SIGMA = 0.03;
/** How far the attitude may still turn until contact, by standard deviation [rad]: the thrusters hold it to a tenth of a degree. */
const TURN_SIGMA = (0.1 * Math.PI) / 180;
/** The slopes that a contact may find are taken as so many standard deviations from end to end [-]. */
const SPAN_SIGMAS = 4;
/** For how a limit grows [rad], [m/s]. */
const ANGLE_STEP = Math.PI / 180;
const RATE_STEP = 0.1;

/**
 * P(stay upright) if the lander goes on as it is believed to move [-]; undefined where the table of limits does not hold the contact that is predicted.
 * What is believed may be off as its covariance says, the slope as prediction and map say, the descent rate as that of now.
 */
export function standOdds(
  table: LimitTable,
  believed: EstimateView,
  { mass }: DescentState,
  { contact, riseSigma }: SlopeBelief,
): number | undefined {
  if (!isInTable(table, contact, believed.angle)) return undefined;
  const at = { table, believed, mass, contact, riseSigma };
  return arrivalOdds({
    vx: believed.vx,
    vxSigma: believed.sigma.vx,
    angleSigma: Math.sqrt(believed.sigma.angle * believed.sigma.angle + TURN_SIGMA * TURN_SIGMA),
    covariance: believed.driftWithAngle,
    right: sideLimit(at, 1),
    left: sideLimit(at, -1),
  });
}

function isInTable({ slopes, descentRates, leans }: LimitTable, contact: PredictedContact, angle: number): boolean {
  const steepest = Math.max(Math.abs(contact.slopes[0]), Math.abs(contact.slopes[1]));
  // the slopes of a table need not reach as far uphill as downhill
  return (
    steepest <= Math.min(last(slopes), -(slopes[0] ?? 0)) &&
    contact.descentRate <= last(descentRates) &&
    Math.abs(angle) <= last(leans)
  );
}

/** Where it will come down on the map, and by how much the ground there may rise otherwise from foot to foot, by standard deviation [-]. */
interface SlopeBelief {
  readonly contact: PredictedContact;
  readonly riseSigma: number;
}

function last(entries: readonly number[]): number {
  return entries.at(-1) ?? 0;
}

interface Expected extends SlopeBelief {
  readonly table: LimitTable;
  readonly believed: EstimateView;
  readonly mass: number;
}

/** Of a limit between two places that lie `step` to either side. */
function growth(less: number, more: number, step: number): number {
  return (more - less) / (2 * step);
}

/** `travel` is +1 to the right: there ground that rises to the right is uphill, and leaning with it is turning clockwise. */
function sideLimit({ table, believed, mass, contact, riseSigma }: Expected, travel: 1 | -1): SideLimit {
  const limit = (slope: number, angle: number, descentRate: number): number =>
    interpolateLimit(table, { slope: -travel * slope, descentRate, lean: -travel * angle, mass });
  const { slope, descentRate, slopes } = contact;
  const { angle, sigma } = believed;
  const perRadian = growth(
    limit(slope, angle - ANGLE_STEP, descentRate),
    limit(slope, angle + ANGLE_STEP, descentRate),
    ANGLE_STEP,
  );
  const perSlope = growth(
    limit(slope - ANGLE_STEP, angle, descentRate),
    limit(slope + ANGLE_STEP, angle, descentRate),
    ANGLE_STEP,
  );
  const perRate = growth(
    limit(slope, angle, descentRate - RATE_STEP),
    limit(slope, angle, descentRate + RATE_STEP),
    RATE_STEP,
  );
  const place = (slopes[1] - slopes[0]) / SPAN_SIGMAS;
  const bySlope = perSlope * Math.sqrt(place * place + riseSigma * riseSigma);
  const byRate = perRate * sigma.vy;
  return {
    speed: limit(slope, angle, descentRate),
    sigma: Math.sqrt(LIMIT_SIGMA * LIMIT_SIGMA + bySlope * bySlope + byRate * byRate),
    perRadian,
  };
}
