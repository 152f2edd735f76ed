import { prepareTouchdown, runTouchdown } from '../../engine/touchdown/index.ts';
import { bisectLimit } from './bisectLimit.ts';
import { ringLander } from './ringLander.ts';
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
  /** Of the bisection between 1 and 3 m/s; default 12. */
  readonly turns?: number;
}

/** Largest speed along the ground at which the simulated body does not turn over [m/s]. Throws when it never does below 3 m/s. */
export function caughtLimit({ stiffness, friction, slope = 0, damping = 2, turns = 12 }: Catch): number {
  const { mass, halfStance, centerHeight, inertia } = CAUGHT;
  const lander = ringLander({
    mass,
    inertia: [inertia, inertia, inertia],
    centerHeight,
    legCount: 4,
    radius: halfStance * Math.SQRT2,
    firstAzimuth: Math.PI / 4,
    crushForce: 1e15,
    stiffness,
    bottomedStiffness: stiffness,
  });
  const prepared = prepareTouchdown(lander);
  if (!prepared.ok) throw new Error(JSON.stringify(prepared.error));
  return bisectLimit(1, 3, turns, (alongGround) => {
    const state = {
      horizontalSpeed: alongGround * Math.cos(slope),
      descentRate: alongGround * Math.sin(slope),
      pitch: slope,
    };
    const conditions = { gravity: MOON, ground: plane(friction, slope), state };
    return runTouchdown(prepared.value, conditions, { damping }).outcome === 'tipped downhill';
  });
}
