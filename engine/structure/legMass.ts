/**
 * What legs weigh, as a stated parametric trade: no source gives a law for them, so two bounding ones are used side by side,
 * both anchored at legs whose mass is known.
 *
 *   m = m₀ (F / F₀) (ℓ / ℓ₀)                 strength: a strut of section A = F/σ weighs ρ A ℓ ~ F ℓ
 *   m = m₀ (F / F₀)^½ (ℓ / ℓ₀)²              buckling: Euler's F = π² E I / ℓ² with I ~ A² gives A ~ ℓ √F, so ρ A ℓ ~ ℓ² √F
 *
 * F  crush force of the last stage [N]      ℓ  length from footpad to hip [m]
 *
 * The algebra is ours, from Hooke's and Euler's laws; that legs follow it is common practice, no source. To be trusted for
 * half to twice the length and force of the anchor, and not for mechanisms, footpads or fairings, which scale otherwise.
 */
import { assert } from '../assert.ts';
import type { Lander, Leg } from '../lander/lander.ts';
import { length3, subtract3 } from '../math/index.ts';

/** Masses by the two laws; which is larger depends on the leg [kg]. */
interface LegMass {
  readonly strength: number;
  readonly buckling: number;
  /** Whether length and force lie within LEG_LAW_RANGE of the anchor. */
  readonly isInRange: boolean;
}

/** Ratios to the anchor between which the laws are to be trusted [-]. */
const LEG_LAW_RANGE = { least: 0.5, most: 2 } as const;

interface LegAnchor {
  /** Of one leg [kg]. */
  readonly mass: number;
  /** [N] */
  readonly force: number;
  /** [m] */
  readonly length: number;
}

/** Share of a lander's mass that its legs are taken to weigh when no part says so [-]. Common practice, no source. */
const LEG_MASS_SHARE = 0.03;
/** What the legs of a lander weigh together [kg]: its parts of the kind 'gear', or LEG_MASS_SHARE of the mass given where it has none. */
export function massOfLegs(lander: Lander, mass: number): number {
  const known = lander.parts.filter(({ kind }) => kind === 'gear').reduce((sum, part) => sum + part.mass, 0);
  return known > 0 ? known : LEG_MASS_SHARE * mass;
}

/** Legs of a lander as an anchor: their mass shared out evenly. */
export function legAnchor(lander: Lander, mass: number): LegAnchor {
  const count = lander.legs.length;
  assert(count > 0, 'a lander has legs');
  return {
    mass: massOfLegs(lander, mass) / count,
    force: lander.legs.reduce((sum, leg) => sum + lastForce(leg), 0) / count,
    length: lander.legs.reduce((sum, leg) => sum + legLength(leg), 0) / count,
  };
}

/** Mass of one leg of a force and length by both laws [kg]. */
export function legMass(anchor: LegAnchor, force: number, length: number): LegMass {
  const byForce = force / anchor.force;
  const byLength = length / anchor.length;
  const { least, most } = LEG_LAW_RANGE;
  const isInRange = [byForce, byLength].every((ratio) => ratio >= least && ratio <= most);
  return {
    strength: anchor.mass * byForce * byLength,
    buckling: anchor.mass * Math.sqrt(byForce) * byLength * byLength,
    isInRange,
  };
}

export function lastForce(leg: Leg): number {
  return leg.stages[leg.stages.length - 1]?.force ?? 0;
}

export function legLength(leg: Leg): number {
  return length3(subtract3(leg.hip, leg.footpad));
}
