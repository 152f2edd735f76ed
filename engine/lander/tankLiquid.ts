/**
 * Liquid at rest in a cylindrical tank, taken as a rigid solid frozen level: no slosh, no tilt of its surface. The
 * lateral modes and the shift of the surface are models of their own.
 */
import { assert } from '../assert.ts';
import { findRoot, sin } from '../math/index.ts';
import type { BodyPoint, Tank } from './lander.ts';

interface TankLiquid {
  /** [kg] */
  readonly mass: number;
  /** [m] */
  readonly center: BodyPoint;
  /** Principal inertias about that center, along x, y, z [kg·m²]. */
  readonly moments: BodyPoint;
}

/** Liquid in a tank filled to a fraction of its volume. */
export function tankLiquid(tank: Tank, fill: number = tank.fill): TankLiquid {
  assert(fill >= 0 && fill <= 1, `fill of tank ${tank.name} lies from 0 to 1`);
  const { radius: r, length, density } = tank;
  const mass = density * fill * Math.PI * r * r * length;
  return tank.orientation === 'upright' ? uprightLiquid(tank, fill, mass) : lyingLiquid(tank, fill, mass);
}

/** A column as wide as the tank, standing on its bottom. */
function uprightLiquid(tank: Tank, fill: number, mass: number): TankLiquid {
  const { radius: r, bottomHeight, offset } = tank;
  const column = fill * tank.length;
  const across = (mass * (3 * r * r + column * column)) / 12;
  return {
    mass,
    center: [offset[0], offset[1], bottomHeight + column / 2],
    moments: [across, across, (mass * r * r) / 2],
  };
}

/**
 * Prism along y whose section is the segment of a circle below a level chord, of central angle θ.
 *
 *   A = R² (θ − sin θ) / 2,   centroid below the circle's center  c = 4 R sin³(θ/2) / (3 (θ − sin θ))
 *   ∫ x² dA = R⁴ (3θ − 3 sin θ − 2 sin θ sin²(θ/2)) / 24       across, in the chord's direction
 *   ∫ z² dA = R⁴ (θ − sin θ + 2 sin θ sin²(θ/2)) / 8           about the circle's center, at right angles to the chord
 *
 * The second moments follow from polar integration over the sector less the triangle [Young2002] table A.1.
 */
function lyingLiquid(tank: Tank, fill: number, mass: number): TankLiquid {
  const { radius: r, length, bottomHeight, offset } = tank;
  const middle = bottomHeight + r;
  const angle = segmentAngle(fill);
  if (angle === 0) return { mass, center: [offset[0], offset[1], bottomHeight], moments: [0, 0, 0] };
  const half = sin(angle / 2);
  const spread = angle - sin(angle);
  const twist = 2 * sin(angle) * half * half;
  const drop = (4 * r * half * half * half) / (3 * spread);
  // mean squares over the liquid's mass
  const xx = (r * r * (3 * spread - twist)) / (12 * spread);
  const zz = (r * r * (spread + twist)) / (4 * spread) - drop * drop;
  const yy = (length * length) / 12;
  return {
    mass,
    center: [offset[0], offset[1], middle - drop],
    moments: [mass * (yy + zz), mass * (xx + zz), mass * (xx + yy)],
  };
}

/** Below this fraction the liquid of a lying tank counts as a point at its bottom: θ − sin θ would be mostly rounding [-]. */
const LEAST_FILL = 1e-9;

/** Central angle of the segment that holds a fraction of a circle's area, 0 to 2π: root of θ − sin θ = 2π fill [rad]. */
function segmentAngle(fill: number): number {
  if (fill < LEAST_FILL) return 0;
  const search = findRoot((angle) => angle - sin(angle) - 2 * Math.PI * fill, { low: 0, high: 2 * Math.PI });
  return search.kind === 'root' ? search.x : 2 * Math.PI;
}
