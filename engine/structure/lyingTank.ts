/** Liquid in a cylindrical tank that lies on its side: its level section, and how far it runs when the axis is tilted. */
import { assert } from '../assert.ts';
import type { Tank } from '../lander/lander.ts';
import { atan2, cos, findRoot, sin, tan } from '../math/index.ts';

/** Cross-section of the liquid in a lying tank, level. */
interface LiquidSection {
  /** Above the lowest line [m]. */
  readonly depth: number;
  /** Of the surface [m]. */
  readonly width: number;
  /** [m²] */
  readonly area: number;
}

/**
 * Section of the liquid of a lying tank filled to a fraction of its volume, above 0 and below 1.
 *
 *   β − sin β cos β = π fill,   depth R (1 − cos β),   width 2 R sin β            segment of half angle β
 */
export function liquidSection({ radius: r }: Pick<Tank, 'radius'>, fill: number): LiquidSection {
  assert(fill > 0 && fill < 1, `a tank with a surface is neither empty nor full, got a fill of ${fill}`);
  const search = findRoot((angle) => angle - sin(angle) * cos(angle) - Math.PI * fill, { low: 0, high: Math.PI });
  assert(search.kind === 'root', `no level of a lying tank at a fill of ${fill}`);
  return { depth: r * (1 - cos(search.x)), width: 2 * r * sin(search.x), area: fill * Math.PI * r * r };
}

/**
 * Shift of the liquid's center of mass along the axis of a lying tank when the axis is tilted by θ [m].
 *
 *   shift = (I_S / V) tan θ,   I_S = w L³ / 12,   V = A L                 free-surface effect, [Rawson2001] ch. 3
 *
 * w, A  surface width and area of the level section [m], [m²]      L  length of the tank [m]
 *
 * To first order in θ, since the width changes with the level. `upTo`: the tilt at which the surface meets the end of the
 * bottom line or of the top line [rad]; beyond it the liquid runs less far than this says. Across its axis the tank's
 * liquid turns with gravity instead: slosh/lyingShift.ts.
 */
export function shiftAlong(tank: Tank, fill: number, tilt: number): { readonly shift: number; readonly upTo: number } {
  assert(tank.orientation === 'lying', `tank ${tank.name} lies on its side`);
  if (fill <= 0 || fill >= 1) return { shift: 0, upTo: Math.PI / 2 };
  const { depth, width, area } = liquidSection(tank, fill);
  const room = Math.min(depth, 2 * tank.radius - depth);
  return {
    shift: ((width * tank.length * tank.length) / (12 * area)) * tan(tilt),
    upTo: atan2(room, tank.length / 2),
  };
}
