import { prepareTouchdown, type TouchdownKernel } from '../../engine/touchdown/index.ts';
import { MujocoFourFooted, type FourFooted } from './MujocoFourFooted.ts';
import type { loadMujocoEngine } from './mujocoBlock.ts';
import { ringLander } from './ringLander.ts';

/** A rigid body on four feet at (+-halfStance, +-halfStance). */
type SquareBody = Pick<FourFooted, 'mass' | 'inertia' | 'halfStance' | 'centerHeight'>;

/** The body that is set down here and in the other engine, by the tests and by the bench. */
export const FOUR_FOOTED: SquareBody = {
  mass: 6000,
  inertia: [9000, 9000, 12_000],
  halfStance: 2,
  centerHeight: 2.4,
};

/** Its spheres in the other engine roll: the pivot wanders by about the radius times the lean, 0.4 % of the rate that tips it [m]. */
const FOOT_RADIUS = 0.02;

/** The step at which the other engine is usually run [s]. */
export const USUAL_STEP = 0.002;

/** Here: the body on four upright legs of `stiffness` [N/m] that never crush. */
export function squareKernel(body: SquareBody, stiffness: number): TouchdownKernel {
  const { mass, inertia, halfStance, centerHeight } = body;
  const lander = ringLander({
    mass,
    inertia,
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
  return prepared.value;
}

/** There: FOUR_FOOTED in the other engine. */
export function fourFootedThere(
  mujoco: Awaited<ReturnType<typeof loadMujocoEngine>>,
  scene: Pick<FourFooted, 'friction' | 'gravity' | 'slope' | 'contact'> & { readonly step?: number },
): MujocoFourFooted {
  return new MujocoFourFooted(mujoco, { ...FOUR_FOOTED, footRadius: FOOT_RADIUS, step: USUAL_STEP, ...scene });
}
