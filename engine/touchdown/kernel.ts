import type { Lander } from '../lander/lander.ts';
import type { Vec3 } from '../math/vec3.ts';
import type { ProfileGround } from './profileGround.ts';

/**
 * A lander made ready: what depends on it alone, and the flat arrays that each run overwrites from its start to its end. One run at
 * a time; a kernel never leaves its thread.
 */
export interface TouchdownKernel {
  readonly lander: Lander;
  readonly mass: number;
  /** Center of mass, body frame [m]. */
  readonly center: Vec3;
  /** Principal axes as rows, body frame; moments [kg·m²]. */
  readonly axes: readonly [Vec3, Vec3, Vec3];
  readonly moments: Vec3;
  /** One record a leg as built, unloaded, in its order; see layout.ts. */
  readonly legsAsBuilt: Float64Array;
  /** One record a hull point. */
  readonly hull: Float64Array;
  /** Farthest footpad or hull point from the center of mass [m]. */
  readonly reach: number;

  // overwritten by each run
  readonly body: Float64Array;
  /** Records of the legs that are there, packed; see feetEnd. */
  readonly feet: Float64Array;
  readonly run: Float64Array;
  readonly found: Float64Array;
  readonly trial: Float64Array;
  readonly hullForce: Float64Array;
  /** Corrections of the step at the edges of a contact, over the step: force [N], moment [N·m], ground frame. */
  readonly impulse: Float64Array;
  readonly touch: Float64Array;
  /** One past the last used place in feet. */
  feetEnd: number;
  /** Offsets into feet, around the footprint, counter-clockwise in plan. */
  footprint: readonly number[];
  /** Crush stages of the legs in this run, by leg index: force [N] and stroke [m] in turn. */
  readonly stages: readonly Float64Array[];
  /** Undefined on a plane. */
  profile: ProfileGround | undefined;
}
