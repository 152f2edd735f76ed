import { assert } from '../assert.ts';
import { normalProbability } from '../math/normalDistribution.ts';

/** The tip limit to one side, as it is known before contact. */
export interface SideLimit {
  /** Horizontal speed at which it tips, at the angle believed; Infinity: at none [m/s]. */
  readonly speed: number;
  /** Standard deviation of it, for whatever is not the angle: slope, friction, how it was looked up [m/s]. */
  readonly sigma: number;
  /** By how much it grows with the angle, counter-clockwise [m/s/rad]. */
  readonly perRadian: number;
}

export interface ArrivalBelief {
  /** Horizontal velocity at contact, + to the right: mean and standard deviation [m/s]. */
  readonly vx: number;
  readonly vxSigma: number;
  /** Standard deviation of the angle at contact [rad]. */
  readonly angleSigma: number;
  /** Covariance of both [m/s·rad]. */
  readonly covariance: number;
  /** For travel to the right, and to the left. */
  readonly right: SideLimit;
  readonly left: SideLimit;
}

/**
 * P(stay upright): the probability that the lander arrives slower than its tip limit on the side to which it travels [-].
 *
 *   P = P(−L_l < v < L_r) = Φ((L_r − μ)/s_r) − Φ((−L_l − μ)/s_l)
 *   s_r² = σ² + σ_Lr² + k_r²·σ_θ² − 2·k_r·c           variance of v − L_r
 *   s_l² = σ² + σ_Ll² + k_l²·σ_θ² + 2·k_l·c           variance of v + L_l
 *
 * μ, σ  velocity      L, σ_L  limit of a side      k  its growth with the angle      σ_θ  angle      c  covariance of velocity and angle
 *
 * Closed form for normal velocity, angle and limits, the limits independent of both but for k: v − L_r and v + L_l are then normal, and the events
 * v ≥ L_r and v ≤ −L_l exclude each other where L_r + L_l > 0. Limits below 0 (tips at rest) are meant so: P may come out as 0, and where the two
 * events overlap it is cut at 0.
 */
export function arrivalOdds(belief: ArrivalBelief): number {
  const { vx, vxSigma, angleSigma, covariance, right, left } = belief;
  assert(vxSigma >= 0 && angleSigma >= 0, `deviations are 0 or more, came ${vxSigma} and ${angleSigma}`);
  const common = vxSigma * vxSigma;
  const spreadOf = ({ sigma, perRadian }: SideLimit, sign: 1 | -1): number =>
    Math.sqrt(
      Math.max(
        0,
        common + sigma * sigma + perRadian * perRadian * angleSigma * angleSigma - sign * 2 * perRadian * covariance,
      ),
    );
  const staysRight = shareBelow(right.speed - vx, spreadOf(right, 1));
  const tipsLeft = shareBelow(-left.speed - vx, spreadOf(left, -1));
  return Math.max(0, staysRight - tipsLeft);
}

/** P(z·spread < room); with no spread it is certain. */
function shareBelow(room: number, spread: number): number {
  if (Math.abs(room) === Infinity || spread === 0) return room > 0 ? 1 : 0;
  return normalProbability(room / spread);
}
