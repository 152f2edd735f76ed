import { assert } from '../assert.ts';
import { requiredStance, tripLimit, type PivotBody } from '../pivot/index.ts';
import type { GravityOf, OutsideCheck } from './outsideCheck.ts';
import { AT_LEAST, AT_MOST, EQUALS_PRINTED } from './tolerances.ts';

type Model = 'plastic' | 'lossless';

const EXACT_EXPRESSION = 'root of the trip limit of a point mass; worked out in engine/pivot/requiredStance.ts';
const RULE_OF_THUMB = 'common practice, no source: 1.8 m on Earth becomes about 4.5 m on the Moon';

/** How many times wider a point mass must stand on the Moon than on Earth for the same speed. */
export const STANCE_CHECKS: readonly OutsideCheck[] = [
  equalSpeed('0.05', '2.446'),
  equalSpeed('0.2', '2.319'),
  equalSpeed('0.5', '2.054'),
  {
    name: 'stance for equal speed in the limit of a narrow stance',
    source: 'L - h goes with b^2 / 2h, so speed with b times the square root of gravity',
    kind: 'derived',
    seen: 'yes',
    expected: '2.457186',
    unit: '-',
    ...EQUALS_PRINTED,
    note: 'stance over height on Earth 0.0001',
    compute: (gravityOf) => stanceRatio(0.0001, 'plastic', gravityOf),
  },
  {
    name: 'stance rule of thumb lies above the plastic pivot',
    source: RULE_OF_THUMB,
    kind: 'trend',
    seen: 'no',
    expected: '2.5',
    unit: '-',
    ...AT_MOST,
    note: 'stance over height on Earth 0.2',
    compute: (gravityOf) => stanceRatio(0.2, 'plastic', gravityOf),
  },
  {
    name: 'stance rule of thumb lies below the lossless bound',
    source: RULE_OF_THUMB,
    kind: 'trend',
    seen: 'no',
    expected: '2.5',
    unit: '-',
    ...AT_LEAST,
    note: 'stance over height on Earth 0.2',
    compute: (gravityOf) => stanceRatio(0.2, 'lossless', gravityOf),
  },
];

function equalSpeed(stanceOverHeight: string, expected: string): OutsideCheck {
  return {
    name: `stance for equal speed, Moon over Earth, from b/h ${stanceOverHeight}`,
    source: EXACT_EXPRESSION,
    kind: 'derived',
    seen: 'yes',
    expected,
    unit: '-',
    ...EQUALS_PRINTED,
    note: 'plastic pivot, point mass',
    compute: (gravityOf) => stanceRatio(Number(stanceOverHeight), 'plastic', gravityOf),
  };
}

/** Half stance that the Moon asks for, at the speed that this one just bears on Earth, over this one. */
function stanceRatio(stanceOverHeight: number, model: Model, gravityOf: GravityOf): number {
  const body: PivotBody = { mass: 1, halfStance: stanceOverHeight, centerHeight: 1, inertia: 0 };
  const onEarth = tripLimit(body, { gravity: gravityOf('earth'), slope: 0 });
  assert(onEarth.kind === 'limit', 'anything stands on level ground');
  const limit = onEarth[model];
  assert(limit !== undefined, 'a body that does not descend has a lossless bound');
  const onMoon = requiredStance(body, { speed: limit.alongGround, gravity: gravityOf('moon') })[model];
  assert(onMoon.kind === 'stance', 'a few times the stance on Earth is enough');
  return onMoon.halfStance / stanceOverHeight;
}
