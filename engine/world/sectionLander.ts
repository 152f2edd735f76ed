import type { Vec2 } from '../math/vec2.ts';
import type { Facings } from './facings.ts';
import type { MassTable } from './massTable.ts';

/**
 * A lander as its section shows it: seen along the edge of its footprint over which it tips most easily, or one like it that has come to lie there by turning.
 *
 * Section frame of the body: origin on the footpad plane straight below the center of mass, x across that edge, y along
 * the long axis toward the nose. That edge lies to the right.
 */
export interface SectionLander {
  /** Edges that may lie to the right. */
  readonly facings: Facings;
  /** Azimuth of the outward normal of that edge, from the lander's +x toward its +y [rad]. */
  readonly azimuth: number;
  /** From the foot point of the center of mass to that edge [m]. */
  readonly halfStance: number;
  /** Convex outline of the structure, counter-clockwise [m]. */
  readonly hull: readonly Vec2[];
  readonly masses: MassTable;
}
