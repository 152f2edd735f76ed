/**
 * Where the center of mass of a liquid lies in an upright cylinder whose axis is tilted: the surface stays level, so the
 * liquid runs to the low side.
 *
 * Method: exact volume integrals over the circle. While the plane of the surface cuts neither bottom nor top they are
 * the moments of the whole circle; where it does, the liquid is a cylinder's hoof (or one taken from another), and the
 * integrals over the part of the circle on one side of a chord are elementary.
 */
import { assert } from '../assert.ts';
import { asin, findRoot, tan } from '../math/index.ts';
import { LEAST_LIQUID } from '../tolerances.ts';

interface UprightTank {
  /** Inner radius [m]. */
  readonly radius: number;
  /** Inner length along the axis [m]. */
  readonly length: number;
  /** Depth of the liquid when the axis stands upright, above 0, up to length [m]. */
  readonly depth: number;
}

/** What the surface meets besides the wall. */
type SurfaceContact = 'wall only' | 'bottom' | 'top' | 'bottom and top';

/** Move of a liquid's center from its place under a level tank, in the tank's own frame. */
interface LiquidShift {
  /** Across the axis, + toward the side that a positive tilt lowers [m]. */
  readonly lateral: number;
  /** Along the axis, + away from the bottom [m]. */
  readonly axial: number;
  readonly surface: SurfaceContact;
}

/**
 * Shift of the liquid's center of mass when effective gravity leaves the tank's axis by a tilt [rad], |tilt| < π/2.
 *
 *   x = R² tan β / (4 h),   z = R² tan² β / (8 h)         while R tan β ≤ h and h + R tan β ≤ H
 *
 * R  radius [m]   H  length [m]   h  depth [m]   β  tilt [rad]
 *
 * Exact for a surface at rest, small tilt or not. Derivation: the depth at distance x toward the low side is h + x tan β;
 * its moments over the circle are ∫ x (h + x tan β) dA = tan β π R⁴/4 and ½ ∫ (h + x tan β)² dA, the liquid π R² h.
 */
export function uprightShift(tank: UprightTank, tilt: number): LiquidShift {
  const { radius, length, depth } = tank;
  assert(radius > 0 && radius < Infinity && length < Infinity, 'radius and length are above 0');
  assert(depth > 0 && depth <= length, 'there is liquid, and no more than the tank holds');
  assert(Math.abs(tilt) < Math.PI / 2, `the tilt lies between -90 and 90 degrees, got ${tilt} rad`);
  const side = tilt < 0 ? -1 : 1;
  const slope = tan(Math.abs(tilt));
  const rise = radius * slope;
  if (rise <= depth && depth + rise <= length)
    return { lateral: (side * radius * rise) / (4 * depth), axial: (rise * rise) / (8 * depth), surface: 'wall only' };
  const { lateral, axial, surface } = cutShift({ radius, length, depth }, rise);
  return { lateral: side * lateral, axial: axial - depth / 2, surface };
}

/** Center of a liquid whose surface meets bottom or top: its distance to the low side and its height above the bottom. */
function cutShift({ radius, length, depth }: UprightTank, rise: number): LiquidShift {
  if (depth <= LEAST_LIQUID * rise) return { lateral: radius, axial: 0, surface: 'bottom' };
  if (length - depth <= LEAST_LIQUID * rise) return { lateral: 0, axial: depth / 2, surface: 'top' };
  // in radii across and rises along: the surface stands at v + a, v from −1 to 1, and the top at a − b
  const height = length / rise;
  const volume = (Math.PI * depth) / rise;
  const search = findRoot((a) => hoofVolume(a) - hoofVolume(a - height) - volume, { low: -1, high: height + 1 });
  assert(search.kind === 'root', 'a surface somewhere between bottom and top bounds the liquid');
  const a = search.x;
  const b = a - height;
  const lateral = (hoofLateral(a) - hoofLateral(b)) / volume;
  const axial = (hoofAxial(a) - hoofAxial(b) - height * hoofVolume(b)) / volume;
  return { lateral: lateral * radius, axial: axial * rise, surface: contactAt(a, b) };
}

function contactAt(a: number, b: number): SurfaceContact {
  if (a < 1) return b > -1 ? 'bottom and top' : 'bottom';
  return b > -1 ? 'top' : 'wall only';
}

// Integrals over the unit circle of w(v) = 2 √(1 − v²), the part v > −a on which v + a is above 0:

/** ∫ w dv */
function segmentArea(a: number): number {
  if (a >= 1) return Math.PI;
  return a <= -1 ? 0 : Math.PI / 2 + asin(a) + a * Math.sqrt(1 - a * a);
}

/** ∫ w v dv */
function segmentMoment(a: number): number {
  const square = Math.max(0, 1 - a * a);
  return (2 / 3) * square * Math.sqrt(square);
}

/** ∫ w v² dv */
function segmentSecondMoment(a: number): number {
  if (a >= 1) return Math.PI / 4;
  if (a <= -1) return 0;
  return (Math.PI / 2 + asin(a) - a * (1 - 2 * a * a) * Math.sqrt(1 - a * a)) / 4;
}

/** ∫ w (v + a) dv: volume of the hoof. */
function hoofVolume(a: number): number {
  return segmentMoment(a) + a * segmentArea(a);
}

/** ∫ w v (v + a) dv: its moment across. */
function hoofLateral(a: number): number {
  return segmentSecondMoment(a) + a * segmentMoment(a);
}

/** ½ ∫ w (v + a)² dv: its moment along. */
function hoofAxial(a: number): number {
  return (segmentSecondMoment(a) + 2 * a * segmentMoment(a) + a * a * segmentArea(a)) / 2;
}
