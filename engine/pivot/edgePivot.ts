/**
 * A body whose feet catch on an edge: how fast may it come before it turns over that edge? Everything is seen in the
 * plane across the edge (the section), u along the ground toward the edge, n out of the ground. The section may be a
 * slanting cut through a lander in space: then gravity and the velocities are their components in it.
 *
 *   ω  = (m h v_t ∓ m b w + H) / I_P           − leading foot, + trailing foot first, 0 together       (1)
 *   falls over if  ½ I_P ω² >= m g L (1 − cos(α − φ))  and  ω > 0                          (2)
 *
 * b    foot point to edge [m]          h  center of mass above the ground [m]     L² = b² + h², tan α = b/h
 * I_P  inertia about the edge, I + m L² [kg·m²]           H  angular momentum about the center before contact [kg·m²/s]
 * v_t  speed toward the edge [m/s]     w  closing speed [m/s]                      φ  fall of the ground toward the edge [rad]
 *
 * Derivation. The impulse at the foot that catches has no moment about it, so angular momentum about that foot is kept.
 * Before: H + m (r × v). The center stands at u = −b, n = h from the leading foot and moves with v_t along u, −w along n:
 * tipping moment m (h v_t − b w). From the trailing foot it stands at u = +b: m (h v_t + b w). After: I_P ω. That is (1).
 * Turning about the leading foot, the center's direction makes α − φ with the vertical and must reach it: it climbs
 * L (1 − cos(α − φ)). Energy is kept while turning, which gives (2), or ω_c = 2 sin((α − φ)/2) √(m g L / I_P).
 * Trailing foot first: the turn must pass to the leading foot. That second impact is taken as free of loss, so the limit
 * is the lower one; a plastic one leaves only the share 1 − 2 m b²/I_P of ω.
 * Together: legs that crush take up the closing speed, pushing back evenly and evenly long, before the leading foot turns
 * the body; w drops out of (1). It lies between the other two, which take the legs as rigid. A lander that arrives upright on a
 * slope need not keep to it: uphill feet land first and spin the body, and a tall one (b/h below some 0.8) falls far below this limit.
 *
 * The lossless bound asks energy alone, on rigid legs; for feet together and a descent rate there is none, since the height that
 * crushing legs can still give up is not known here: falling needs ½ m (v_t² + w²) + E >= m g L (1 − cos(α − φ)), E rotational energy.
 * Same physics: [TPT2020].
 */
import { assert } from '../assert.ts';
import { atan, cos, sin } from '../math/index.ts';

/**
 * Which foot of a rigid body meets the ground first, in the direction of travel; 'worst': whichever gives the lower limit; or
 * 'together', on legs that crush.
 */
export const FIRST_CONTACTS = ['worst', 'leading', 'trailing', 'together'] as const;
export type FirstContact = (typeof FIRST_CONTACTS)[number];

/** a + b·v, as a function of the horizontal speed v in the direction of travel. */
interface Line {
  readonly atRest: number;
  readonly perSpeed: number;
}

export interface EdgeSection {
  /** [kg] */
  readonly mass: number;
  /** Foot point of the center of mass to the edge [m]. */
  readonly halfStance: number;
  /** Center of mass above the ground, perpendicular to it [m]. */
  readonly centerHeight: number;
  /** About the center of mass along the edge [kg·m²]. */
  readonly inertia: number;
  /** Component in the section [m/s²]. */
  readonly gravity: number;
  /** Fall of the ground toward the edge, in the section [rad]; below α. */
  readonly slope: number;
  /** Angular momentum about the center of mass, along the edge, toward tipping [kg·m²/s]. */
  readonly spin: number;
  /** Energy of the rotation before contact [J]. */
  readonly spinEnergy: number;
  /** Cosine of the angle between direction of travel and edge normal, in the ground plane; above 0 [-]. */
  readonly facing: number;
  readonly firstContact: FirstContact;
  /** Components of the velocity; absent when the body slides along the ground with no closing speed. */
  readonly approach?: { readonly across: Line; readonly closing: Line };
}

/** A limit as a speed along the ground (the body slides, or meets the ground at grazing incidence) or a horizontal one. */
export type EdgeLimit =
  | { readonly kind: 'alongGround'; readonly speed: number }
  | { readonly kind: 'horizontal'; readonly speed: number };

/** Half the climb that (2) asks for, over g·L: sin²((α − φ)/2). */
function halfClimb(section: EdgeSection): { readonly arm: number; readonly sine: number } {
  const { halfStance: b, centerHeight: h, slope } = section;
  const left = atan(b / h) - slope;
  assert(left > 0, 'a body that falls over standing has no trip limit');
  return { arm: Math.sqrt(b * b + h * h), sine: sin(left / 2) };
}

/**
 * Least speed at which the plastic pivot (1), (2) turns the body over the edge. Signed: negative where it turns over even
 * when moving away from the edge.
 *
 * Where the speed sought has the body leave the ground (w < 0) there is no such contact: it then slides, w = 0. Where more
 * speed does not help to tip at all (its lever is not positive: steep ground and a wide stance), the limit is that of
 * sliding, or of the closing speed held at its value for no horizontal speed, whichever contact is possible; both are lower
 * bounds.
 */
export function plasticEdgeLimit(section: EdgeSection): EdgeLimit {
  if (section.firstContact === 'worst' && section.approach !== undefined) {
    const leading = plasticEdgeLimit({ ...section, firstContact: 'leading' });
    const trailing = plasticEdgeLimit({ ...section, firstContact: 'trailing' });
    return horizontalSpeed(trailing, section) < horizontalSpeed(leading, section) ? trailing : leading;
  }
  const { mass: m, halfStance: b, centerHeight: h, facing } = section;
  const { arm, sine } = halfClimb(section);
  const pivotInertia = section.inertia + m * arm * arm;
  // I_P ω_c − H, over m: what h·v_t ∓ b·w must reach
  const needed = (2 * sine * Math.sqrt(m * section.gravity * arm * pivotInertia) - section.spin) / m;
  const sliding: EdgeLimit = { kind: 'alongGround', speed: signedShare(needed, h, facing) };
  if (section.approach === undefined) return sliding;

  const { across, closing } = section.approach;
  const side = firstArm(section.firstContact, b);
  const lever = h * across.perSpeed - side * closing.perSpeed;
  const left = needed - h * across.atRest + side * closing.atRest;
  if (lever > 0) {
    const speed = left < 0 ? (left / lever) * facing : left / lever;
    return closing.atRest + closing.perSpeed * speed < 0 ? sliding : { kind: 'horizontal', speed };
  }
  if (across.perSpeed <= 0 || (side < 0 && left > 0)) return sliding;
  return { kind: 'horizontal', speed: left < 0 ? left / h : left / (h * across.perSpeed) };
}

/** A limit along the ground as a horizontal speed, seen in the section [m/s]. */
function horizontalSpeed(limit: EdgeLimit, section: EdgeSection): number {
  return limit.kind === 'alongGround' ? limit.speed * cos(section.slope) : limit.speed;
}

/** Arm of the closing speed about the foot that catches, against tipping [m]. */
function firstArm(firstContact: FirstContact, halfStance: number): number {
  switch (firstContact) {
    case 'leading':
      return halfStance;
    case 'trailing':
      return -halfStance;
    case 'together':
    case 'worst':
      return 0;
  }
  return firstContact satisfies never;
}

/** Speed from what is needed of h·v_t. A negative one is measured across the edge: it says that it trips at rest. */
function signedShare(needed: number, lever: number, facing: number): number {
  return needed > 0 ? needed / (lever * facing) : needed / lever;
}

/**
 * Speed below which energy alone forbids a fall; undefined when the energy of descent and rotation would already do, and with a
 * descent rate on legs that crush.
 */
export function losslessEdgeLimit(section: EdgeSection): EdgeLimit | undefined {
  if (section.firstContact === 'together' && section.approach !== undefined) return undefined;
  const { arm, sine } = halfClimb(section);
  // v_t² + w² that must be reached
  const needed = 4 * section.gravity * arm * sine * sine - (2 * section.spinEnergy) / section.mass;
  if (needed <= 0) return undefined;
  const sliding: EdgeLimit = { kind: 'alongGround', speed: Math.sqrt(needed) / section.facing };
  if (section.approach === undefined) return sliding;

  const { across, closing } = section.approach;
  const square = across.perSpeed * across.perSpeed + closing.perSpeed * closing.perSpeed;
  const half = across.perSpeed * across.atRest + closing.perSpeed * closing.atRest;
  const short = needed - across.atRest * across.atRest - closing.atRest * closing.atRest;
  if (short <= 0) return undefined;
  // larger root of square·v² + 2 half·v − short = 0
  const speed = (Math.sqrt(half * half + square * short) - half) / square;
  return closing.atRest + closing.perSpeed * speed < 0 ? sliding : { kind: 'horizontal', speed };
}
