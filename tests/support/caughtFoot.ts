import { runTouchdown } from '../../engine/touchdown/index.ts';
import { bisectLimit } from './bisectLimit.ts';
import { squareKernel } from './fourFootedBody.ts';
import { MOON, plane } from './touchDown.ts';

/**
 * A square body on four legs that slides flat along the ground until its feet hold: what the plastic trip limit is about. Half stance 1.5 m, center
 * of mass at 2 m, inertia 1.5 m^2 times mass.
 */
export const CAUGHT = { mass: 2000, halfStance: 1.5, centerHeight: 2, inertia: 3000 } as const;

export interface Catch {
  /** Of a leg [N/m]. */
  readonly stiffness: number;
  readonly friction: number;
  /** Fall of the ground in the direction of travel [rad]; default level. */
  readonly slope?: number;
  /** Share of critical damping; default 2: nothing rebounds. */
  readonly damping?: number;
  /** Of the bisection between 1 m/s and FASTEST; default 12. */
  readonly turns?: number;
}

/** Fastest that the body is sent along the ground [m/s]. */
export const FASTEST = 3;

/** Largest speed along the ground at which the simulated body does not turn over [m/s]. Throws when it never does below FASTEST. */
export function caughtLimit(caught: Catch): number {
  return bisectLimit(1, FASTEST, caught.turns ?? 12, (alongGround) => turnsOver(caught, alongGround));
}

/** Whether the simulated body turns over downhill at a speed along the ground [m/s]. */
export function turnsOver({ stiffness, friction, slope = 0, damping = 2 }: Catch, alongGround: number): boolean {
  const { mass, halfStance, centerHeight, inertia } = CAUGHT;
  const body = { mass, inertia: [inertia, inertia, inertia], halfStance, centerHeight } as const;
  const kernel = squareKernel(body, stiffness);
  const state = {
    horizontalSpeed: alongGround * Math.cos(slope),
    descentRate: alongGround * Math.sin(slope),
    pitch: slope,
  };
  const conditions = { gravity: MOON, ground: plane(friction, slope), state };
  return runTouchdown(kernel, conditions, { damping }).outcome === 'tipped downhill';
}
