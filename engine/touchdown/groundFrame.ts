import { cos, sin } from '../math/trig.ts';
import { dot3, type Vec3 } from '../math/vec3.ts';
import { profileHeight, type ProfileGround } from './profileGround.ts';
import type { Ground } from './touchdownCase.ts';

/**
 * The frame in which a run is integrated: rows are its axes in the world frame. On a plane x points down the fall line, y level across
 * it, z along the normal; on a profile it is the world frame.
 */
export interface GroundFrame {
  readonly x: Vec3;
  readonly y: Vec3;
  readonly z: Vec3;
  /** Level unit vector toward which the ground falls, world frame; undefined where it is level. */
  readonly fall: Vec3 | undefined;
}

/** Slopes below this count as level for naming uphill and downhill [rad]. */
const LEVEL_SLOPE = 1e-9;

export function groundFrame(ground: Ground): GroundFrame {
  const { shape } = ground;
  if (shape.kind === 'profile') return { x: [1, 0, 0], y: [0, 1, 0], z: [0, 0, 1], fall: undefined };
  const azimuth = shape.fallAzimuth ?? 0;
  const [c, s] = [cos(azimuth), sin(azimuth)];
  const [cosine, sine] = [cos(shape.slope), sin(shape.slope)];
  return {
    x: [cosine * c, cosine * s, -sine],
    y: [-s, c, 0],
    z: [sine * c, sine * s, cosine],
    fall: shape.slope > LEVEL_SLOPE ? [c, s, 0] : undefined,
  };
}

/** Direction in which a profile falls between two places of x, or undefined when they are level. */
export function profileFall(profile: ProfileGround, left: number, right: number): Vec3 | undefined {
  const rise = profileHeight(profile, right) - profileHeight(profile, left);
  if (Math.abs(rise) <= LEVEL_SLOPE * (right - left)) return undefined;
  return [rise > 0 ? -1 : 1, 0, 0];
}

export function toGround(frame: GroundFrame, v: Vec3): Vec3 {
  return [dot3(frame.x, v), dot3(frame.y, v), dot3(frame.z, v)];
}

export function toWorld(frame: GroundFrame, v: Vec3): Vec3 {
  const { x, y, z } = frame;
  return [
    x[0] * v[0] + y[0] * v[1] + z[0] * v[2],
    x[1] * v[0] + y[1] * v[1] + z[1] * v[2],
    x[2] * v[0] + y[2] * v[1] + z[2] * v[2],
  ];
}
