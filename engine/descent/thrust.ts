import { STANDARD_GRAVITY } from '../constants.ts';
import type { Engine } from '../lander/lander.ts';
import { exp } from '../math/exponential.ts';

/**
 * Least whole percent of full thrust at which the engine burns [%]. Between it and 0 there is nothing: the engine is off
 * or burns at its minimum.
 */
export function leastBurnPercent(engine: Engine): number {
  return Math.min(100, Math.ceil((100 * engine.minThrust) / engine.maxThrust));
}

/**
 * What the engine is really commanded when its lever stands at a whole percent [%]: 0 is off, and a lever between 0 and
 * the least burn is at the least burn. The state of a descent shows this number, so that nothing is hidden from the crew.
 */
export function burnPercent(engine: Engine, leverPercent: number): number {
  return leverPercent === 0 ? 0 : Math.max(leverPercent, leastBurnPercent(engine));
}

/** The lever position nearest to a thrust [%]: below half of the least burn the engine is off. */
export function lever(engine: Engine, thrust: number): number {
  const percent = Math.min(100, Math.round((100 * thrust) / engine.maxThrust));
  const least = leastBurnPercent(engine);
  return percent >= least ? percent : 2 * percent >= least ? least : 0;
}

/** Thrust commanded by a lever at a whole percent [N]. */
export function commandedThrust(engine: Engine, leverPercent: number): number {
  return (burnPercent(engine, leverPercent) / 100) * engine.maxThrust;
}

/** Factors of a first-order lag over one step of fixed length. */
export interface LagStep {
  /** Share of the distance to the command that is left after the step [-]. */
  readonly left: number;
  /** The same, on average over the step [-]. */
  readonly meanLeft: number;
}

/**
 * First-order lag, exactly over a step, command held.
 *
 *   T(t) = C + (T0 − C)·e^(−t/τ)                    solution of τ·dT/dt = C − T
 *   mean over dt: C + (T0 − C)·(1 − e^(−dt/τ))·τ/dt
 *
 * τ  lag [s], 0: none       C  command [N]       T0  thrust at the start of the step [N]
 */
export function lagStep(lag: number, dt: number): LagStep {
  if (lag === 0) return { left: 0, meanLeft: 0 };
  const left = exp(-dt / lag);
  return { left, meanLeft: ((1 - left) * lag) / dt };
}

/**
 * Share of the mass that is left after a change of speed in free space [-].
 *
 *   m1 / m0 = e^(−Δv / (Isp·g0))                     rocket equation, textbook
 *
 * Δv  change of speed [m/s]       Isp  specific impulse [s], g0 the standard gravity on every world
 */
export function massLeft(speedChange: number, specificImpulse: number): number {
  return exp(-speedChange / (specificImpulse * STANDARD_GRAVITY));
}

/**
 * Propellant that gives one newton for one second [kg/(N·s)].
 *
 *   dm/dt = T / (Isp·g0)                             definition of specific impulse
 *
 * g0 is the standard gravity on every world.
 */
export function propellantPerImpulse(engine: Engine): number {
  return 1 / (engine.specificImpulse * STANDARD_GRAVITY);
}
