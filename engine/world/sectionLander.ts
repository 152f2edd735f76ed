import type { Vec2 } from '../math/vec2.ts';
import type { Vec3 } from '../math/vec3.ts';
import { stageAt, type CrushLaw } from '../touchdown/legCrush.ts';
import type { MassTable } from './massTable.ts';

/**
 * A lander as its section shows it: seen along the edge of its footprint over which it tips most easily.
 *
 * Section frame of the body: origin on the footpad plane straight below the center of mass, x across that edge, y along
 * the long axis toward the nose. The section is symmetric: both feet stand at the least distance of the footprint's
 * edges, so it tips to either side as easily as the lander tips to its weakest.
 */
export interface SectionLander {
  /** Azimuth of the outward normal of that edge, from the lander's +x toward its +y [rad]. */
  readonly azimuth: number;
  /** From the foot point of the center of mass to either foot [m]. */
  readonly halfStance: number;
  /** Law of the right leg; the left is its mirror image. */
  readonly leg: SectionLeg;
  /** Convex outline of the structure, counter-clockwise [m]. */
  readonly hull: readonly Vec2[];
  readonly masses: MassTable;
}

/** Half of the lander's legs, merged into one that moves in the section. */
export interface SectionLeg {
  /**
   * Unit vector of the strut, from footpad to hip, in which the foot moves as the leg crushes: across (inward is negative),
   * up, and out of the section.
   */
  readonly strut: Vec3;
  /** Of the merged leg: forces and stiffnesses of that many legs. */
  readonly law: CrushLaw;
  /** Half of the lander's legs [-]. */
  readonly legCount: number;
  /** [m] */
  readonly padRadius: number;
}

/** What one leg of the section carries and has been through. Changed in place by the step. */
export interface LegWork {
  /** −1 left, +1 right. */
  readonly side: -1 | 1;
  /** Crushed length of the strut [m]; never shrinks. */
  crushed: number;
  /** Of the friction spring, + where the foot has gone right of where it stuck, and out of the section [m]. */
  stretch: number;
  drag: number;
  inContact: boolean;
  /** Was in contact at some moment since this was last cleared; chatter within a tick leaves it set. */
  touched: boolean;
  /** Overloaded: carries nothing any more. */
  gaveWay: boolean;
  /** Axial load of the merged leg [N]. */
  load: number;
  /** Force of the ground on the foot [N]. */
  forceX: number;
  forceY: number;
  /** Its moment about the center of mass [N·m]. */
  moment: number;
  readonly stance: FootStance;
}

/** How a foot stands on the ground in one step of the leg law: scratch, overwritten before each use. */
export interface FootStance {
  /** How far the foot, as the leg holds it, lies below the plane under its pad, square to it [m]. */
  depth: number;
  /** Unit normal of that plane; its tangent to the right is (normalY, −normalX). */
  normalX: number;
  normalY: number;
  /** From the center of mass to the foot on the ground [m]. */
  armX: number;
  armY: number;
  /** Velocity of the body there, into the ground and along it to the right [m/s]. */
  closing: number;
  sliding: number;
  /** Components of the unit vector along the strut, foot to hip, on normal and tangent. */
  strutNormal: number;
  strutTangent: number;
}

export function createLegWork(side: -1 | 1): LegWork {
  return {
    side,
    crushed: 0,
    stretch: 0,
    drag: 0,
    inContact: false,
    touched: false,
    gaveWay: false,
    load: 0,
    forceX: 0,
    forceY: 0,
    moment: 0,
    stance: {
      depth: 0,
      normalX: 0,
      normalY: 1,
      armX: 0,
      armY: 0,
      closing: 0,
      sliding: 0,
      strutNormal: 1,
      strutTangent: 0,
    },
  };
}

/** True once every stage of the leg is used up. */
export function hasBottomed(leg: SectionLeg, work: LegWork): boolean {
  return stageAt(leg.law, work.crushed) === leg.law.stages.length;
}
