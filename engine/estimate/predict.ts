import { groundHeight } from '../ground/terrain.ts';
import { cos, sin } from '../math/trig.ts';
import { INERTIAL_UNIT } from '../sensors/inertialUnit.ts';
import { TICK_DT } from '../world/constants.ts';
import { addState, addVariance, scaleState } from './covariance.ts';
import type { Estimate } from './estimate.ts';
import { mapRise, mapVariance } from './mapGround.ts';
import { ANGLE, BEAM, BIAS_ACROSS, BIAS_ALONG, BIAS_RATE, HEIGHT, VX, VY, X } from './state.ts';

/** Slow change of the biases: keeps the filter from believing that it knows them for good. Small against what a descent can tell. */
const FORCE_BIAS_WALK = 1e-5; // [m/s²/√s]
const RATE_BIAS_WALK = 1e-8; // [rad/s/√s]

/** Without an inertial unit the lander is taken to hover, with unknown accelerations of this density [m²/s³]: 1 m/s² for a second. */
const UNKNOWN_FORCE = 1;
/** And with unknown turning [rad²/s]: 6 degrees in a second. */
const UNKNOWN_TURN = 0.01;

/**
 * One tick of dead reckoning by the inertial unit: what it says less its biases, turned by the attitude in the middle of the tick, less
 * gravity [Groves2013].
 *
 *   θ' = θ + ω·Δt      v' = v + (R(θ + ω·Δt/2)·f − (0, g))·Δt
 *   x' = x + (vx + vx')/2·Δt      h' = h + (vy + vy')/2·Δt − (m(x') − m(x))
 *
 * m  height of the map [m]      f  specific force [m/s²]      ω  rate [rad/s]      R  from body to section      g  surface gravity [m/s²]
 */
export function predictByUnit(estimate: Estimate, measured: readonly number[]): void {
  const { mean, covariance, setup } = estimate;
  const across = measured[0]! - mean[BIAS_ACROSS]!;
  const along = measured[1]! - mean[BIAS_ALONG]!;
  const rate = measured[2]! - mean[BIAS_RATE]!;
  const rise = mapRise(setup.map, mean[X]!);
  const middle = mean[ANGLE]! + (rate * TICK_DT) / 2;
  const cosine = cos(middle);
  const sine = sin(middle);
  const right = across * cosine - along * sine;
  const up = across * sine + along * cosine;
  move(estimate, right, up - setup.gravity, rate);
  // what each state takes from the others, old values first
  addState(covariance, X, VX, TICK_DT);
  addState(covariance, HEIGHT, VY, TICK_DT);
  addState(covariance, HEIGHT, VX, -rise * TICK_DT);
  addState(covariance, VX, ANGLE, -up * TICK_DT);
  addState(covariance, VX, BIAS_ACROSS, -cosine * TICK_DT);
  addState(covariance, VX, BIAS_ALONG, sine * TICK_DT);
  addState(covariance, VY, ANGLE, right * TICK_DT);
  addState(covariance, VY, BIAS_ACROSS, -sine * TICK_DT);
  addState(covariance, VY, BIAS_ALONG, -cosine * TICK_DT);
  addState(covariance, ANGLE, BIAS_RATE, -TICK_DT);
  const speedNoise = INERTIAL_UNIT.forceSigma * TICK_DT;
  const turnNoise = INERTIAL_UNIT.rateSigma * TICK_DT;
  spread(estimate, speedNoise * speedNoise, turnNoise * turnNoise);
}

/** One tick without an inertial unit: as if hovering without a turn, and all the less certain. */
export function predictBlind(estimate: Estimate): void {
  const { mean, covariance, setup } = estimate;
  const rise = mapRise(setup.map, mean[X]!);
  move(estimate, 0, 0, 0);
  addState(covariance, X, VX, TICK_DT);
  addState(covariance, HEIGHT, VY, TICK_DT);
  addState(covariance, HEIGHT, VX, -rise * TICK_DT);
  spread(estimate, UNKNOWN_FORCE * TICK_DT, UNKNOWN_TURN * TICK_DT);
}

/** Accelerations in the section [m/s²], and the rate [rad/s]. */
function move(estimate: Estimate, right: number, up: number, rate: number): void {
  const { mean } = estimate;
  const { terrain } = estimate.setup.map;
  const vx = mean[VX]! + right * TICK_DT;
  const vy = mean[VY]! + up * TICK_DT;
  const x = mean[X]!;
  mean[X]! += ((mean[VX]! + vx) / 2) * TICK_DT;
  mean[HEIGHT]! += ((mean[VY]! + vy) / 2) * TICK_DT - (groundHeight(terrain, mean[X]!) - groundHeight(terrain, x));
  mean[VX] = vx;
  mean[VY] = vy;
  mean[ANGLE]! += rate * TICK_DT;
  estimate.rate = rate;
}

/**
 * The beam's foot wanders over the map, at vx + vy·tanθ + h·ω/cos²θ, and meets other errors: a first-order Gauss-Markov state of variance 1.
 *
 *   u' = φ·u + √(1 − φ²)·white,  φ = 1 − d/ℓ           d  way of the foot in the tick [m]      ℓ  correlation of the map's error [m]
 */
function wander({ mean, covariance, setup, rate }: Estimate): void {
  const cosine = cos(mean[ANGLE]!);
  const tangent = sin(mean[ANGLE]!) / cosine;
  const speed = mean[VX]! + mean[VY]! * tangent + (mean[HEIGHT]! * rate) / (cosine * cosine);
  const kept = Math.max(0, 1 - (Math.abs(speed) * TICK_DT) / setup.map.correlation);
  mean[BEAM]! *= kept;
  scaleState(covariance, BEAM, kept);
  addVariance(covariance, BEAM, 1 - kept * kept);
}

/** What becomes less certain in a tick: by variances of each velocity and of the angle, and by the map's error, which changes with the ground passed over. */
function spread(estimate: Estimate, speedVariance: number, angleVariance: number): void {
  const { covariance, mean, setup } = estimate;
  addVariance(covariance, HEIGHT, mapVariance(setup.map, mean[VX]! * TICK_DT));
  addVariance(covariance, VX, speedVariance);
  addVariance(covariance, VY, speedVariance);
  addVariance(covariance, ANGLE, angleVariance);
  wander(estimate);
  addVariance(covariance, BIAS_ACROSS, FORCE_BIAS_WALK * FORCE_BIAS_WALK * TICK_DT);
  addVariance(covariance, BIAS_ALONG, FORCE_BIAS_WALK * FORCE_BIAS_WALK * TICK_DT);
  addVariance(covariance, BIAS_RATE, RATE_BIAS_WALK * RATE_BIAS_WALK * TICK_DT);
}
