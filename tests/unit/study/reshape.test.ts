import { describe, expect, it } from 'vitest';
import { massProperties, type Lander } from '../../../engine/lander/index.ts';
import { reshape, SHAPE_FIELDS, shapeOf, type Reshaping } from '../../../engine/study/index.ts';
import { LANDERS } from '../../../levels/index.ts';

function shaped(lander: Lander, to: Reshaping): Lander {
  const made = reshape(lander, to);
  if (!made.ok) throw new Error(JSON.stringify(made.error));
  return made.value;
}

const [trivet, , bolster] = ['trivet', 'steeple', 'bolster'].map((id) =>
  LANDERS.find((lander) => lander.id === id)!,
) as [Lander, Lander, Lander];
function refusedField(lander: Lander, to: Reshaping): string | undefined {
  const made = reshape(lander, to);
  return made.ok ? 'made' : made.error[0]?.path;
}

const gearMass = ({ parts }: Lander) =>
  parts.filter(({ kind }) => kind === 'gear').reduce((sum, { mass }) => sum + mass, 0);

describe('a reshaped lander', () => {
  it.each(LANDERS.map((lander) => [lander.name, lander] as const))(
    '[SY1] has the value asked for in each dimension, as far as a file allows it: %s',
    (_, lander) => {
      const present = shapeOf(lander);
      let tried = 0;
      for (const field of SHAPE_FIELDS)
        for (const share of [0.85, 1.15]) {
          const value = field === 'legCount' ? present.legCount + (share < 1 ? -1 : 1) : present[field] * share;
          const made = reshape(lander, { [field]: value });
          if (!made.ok) continue;
          tried++;
          expect(shapeOf(made.value)[field], field).toBeCloseTo(value, 9);
        }
      expect(tried).toBeGreaterThanOrEqual(12);
    },
  );

  it('[SY1] is the lander itself where nothing is asked', () => {
    for (const lander of LANDERS) expect(shaped(lander, {})).toEqual(lander);
  });

  it('[SY1] is refused by the name of the field where there is none', () => {
    expect(refusedField(trivet, { legCount: 2.5 })).toBe('legCount');
    expect(refusedField(trivet, { fill: 1.2 })).toBe('fill');
    expect(refusedField(trivet, { mass: 300 })).toBe('mass');
    expect(refusedField(trivet, { centerHeight: 0.2 })).toBe('centerHeight');
    // its legs stand in rows
    expect(refusedField(bolster, { legCount: 5 })).toBe('legCount');
  });

  it('[SY2] keeps legs and propellant under mass, and all masses under height', () => {
    const heavy = shaped(trivet, { mass: 3000 });
    expect(gearMass(heavy)).toBe(gearMass(trivet));
    expect(heavy.tanks).toEqual(trivet.tanks);
    const tall = shaped(trivet, { centerHeight: 2 });
    expect(massProperties(tall).mass).toBeCloseTo(massProperties(trivet).mass, 9);
    expect(tall.legs).toEqual(trivet.legs);
    // drawn out from its lowest point: that stays
    expect(Math.min(...tall.hull.map(([, , z]) => z))).toBe(Math.min(...trivet.hull.map(([, , z]) => z)));
  });

  it('[SY2] carries legs whose mass follows their number, their force and their length', () => {
    // as many times the mass as there are legs; the force by the law of strength, which is the heavier above the anchor
    expect(gearMass(shaped(trivet, { legCount: 6 }))).toBeCloseTo((gearMass(trivet) * 6) / 4, 9);
    expect(gearMass(shaped(trivet, { crushForce: 13_500 }))).toBeCloseTo(1.5 * gearMass(trivet), 9);
    expect(gearMass(shaped(trivet, { footRadius: 2.6 }))).toBeGreaterThan(gearMass(trivet));
    expect(gearMass(shaped(trivet, { stroke: 0.6 }))).toBe(gearMass(trivet));
  });
});
