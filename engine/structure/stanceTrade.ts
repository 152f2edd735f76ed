/** What a wider stance buys in trip limit and costs in leg mass: the same lander with its footpads moved in and out. */
import { assert } from '../assert.ts';
import { massProperties } from '../lander/index.ts';
import type { BodyPoint, Lander, Part } from '../lander/lander.ts';
import { assessLander, type ComparedLanding, type StandingFigures } from './assessLander.ts';
import { lastForce, legAnchor, legLength, legMass } from './legMass.ts';

interface StancePoint {
  /** Footpads' distance from the long axis over what it was [-]. */
  readonly factor: number;
  /** All legs together by the two laws of legMass.ts [kg], and whether these are to be trusted there. */
  readonly legMass: { readonly strength: number; readonly buckling: number; readonly isInRange: boolean };
  /** With the larger of the two masses; undefined where it does not stand. */
  readonly standing: StandingFigures | undefined;
}

/** The trade at each factor. Hips stay where they are, so the legs get longer or shorter; crush forces stay. */
export function stanceTrade(
  lander: Lander,
  landing: ComparedLanding,
  factors: readonly number[],
): readonly StancePoint[] {
  const anchor = legAnchor(lander, massProperties(lander).mass);
  return factors.map((factor) => {
    assert(factor > 0 && factor < Infinity, `a stance factor is above 0, not ${factor}`);
    const { legs } = withFootpads(lander, factor);
    const masses = legs.map((leg) => legMass(anchor, lastForce(leg), legLength(leg)));
    const strength = masses.reduce((sum, mass) => sum + mass.strength, 0);
    const buckling = masses.reduce((sum, mass) => sum + mass.buckling, 0);
    const isInRange = masses.every((mass) => mass.isInRange);
    const { standing } = assessLander(withStance(lander, factor), landing);
    return { factor, legMass: { strength, buckling, isInRange }, standing };
  });
}

/** The lander with its footpads so many times as far from the long axis, and legs that weigh what they then must: by the heavier of the two laws of legMass.ts. */
export function withStance(lander: Lander, factor: number): Lander {
  return withLegs(lander, withFootpads(lander, factor).legs);
}

/** The lander on other legs, which weigh what they then must: its parts of the kind 'gear' in proportion to the heavier of the two laws of legMass.ts. */
export function withLegs(lander: Lander, legs: Lander['legs']): Lander {
  const anchor = legAnchor(lander, massProperties(lander).mass);
  const masses = legs.map((leg) => legMass(anchor, lastForce(leg), legLength(leg)));
  const sum = (law: 'strength' | 'buckling') => masses.reduce((all, mass) => all + mass[law], 0);
  const weight = Math.max(sum('strength'), sum('buckling')) / (anchor.mass * lander.legs.length);
  return { ...lander, legs, parts: lander.parts.map((part) => (part.kind === 'gear' ? heavier(part, weight) : part)) };
}

/** As it was but for where its feet are. */
function withFootpads(lander: Lander, factor: number): Lander {
  return { ...lander, legs: lander.legs.map((leg) => ({ ...leg, footpad: moved(leg.footpad, factor) })) };
}

function moved([x, y, z]: BodyPoint, factor: number): BodyPoint {
  return [factor * x, factor * y, z];
}

/** Mass and stated inertia times a factor, in place. */
export function heavier(part: Part, factor: number): Part {
  const { shape } = part;
  if (shape.kind !== 'inertia') return { ...part, mass: part.mass * factor };
  const [xx, yy, zz] = shape.moments;
  return {
    ...part,
    mass: part.mass * factor,
    shape: { kind: 'inertia', moments: [xx * factor, yy * factor, zz * factor] },
  };
}
