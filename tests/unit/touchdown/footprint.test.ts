import { describe, expect, it } from 'vitest';
import type { LegCondition } from '../../../engine/touchdown/touchdownCase.ts';
import {
  ABOVE_EDGE,
  EDGE,
  EDGE_FOOT,
  LEAST_LIFT,
  MARGIN,
  MARGIN_SIZE,
  OUTWARD,
  plumbMargin,
} from '../../../engine/touchdown/footprint.ts';
import { advance } from '../../../engine/touchdown/advance.ts';
import { startTouchdown } from '../../../engine/touchdown/startTouchdown.ts';
import { prepareTouchdown } from '../../../engine/touchdown/index.ts';
import { MOON, plane } from '../../support/touchDown.ts';
import { plainLander } from '../../support/plainLander.ts';

const [HALF_STANCE, HEIGHT, SLOPE] = [1.5, 2, 0.2];

/** Of a lander whose feet stand flat on a slope: legs 0 and 3 to the positive x of its own, which is downhill. */
function marginWith(missing: readonly number[]): Float64Array {
  const prepared = prepareTouchdown(plainLander({ halfStance: HALF_STANCE, centerHeight: HEIGHT }));
  if (!prepared.ok) throw new Error(JSON.stringify(prepared.error));
  const legs = missing.map((leg): LegCondition => ({ leg, kind: 'missing' }));
  const state = { horizontalSpeed: 0, descentRate: 0, pitch: SLOPE };
  startTouchdown(prepared.value, { gravity: MOON, ground: plane(1, SLOPE), state, legs }, {});
  // no step: only what follows from the attitude
  advance(prepared.value, 0);
  const answer = new Float64Array(MARGIN_SIZE);
  plumbMargin(prepared.value, MOON, answer);
  return answer;
}

const vector = (answer: Float64Array, at: number) => Array.from(answer.subarray(at, at + 3));

/** Against gravity in the frame of the ground, whose x is down the slope and z its normal. */
const UP = [-Math.sin(SLOPE), 0, Math.cos(SLOPE)] as const;

function cross([a, b, c]: readonly number[], [d, e, f]: readonly number[]): readonly number[] {
  return [b! * f! - c! * e!, c! * d! - a! * f!, a! * e! - b! * d!];
}

describe('the margin of the plumb line', () => {
  it('is that of the downhill edge for a lander that stands flat on a slope', () => {
    const answer = marginWith([]);
    // the foot is a downhill and h below, both along the slope: a cos - h sin, and h cos + a sin above it
    const level = HALF_STANCE * Math.cos(SLOPE) - HEIGHT * Math.sin(SLOPE);
    const above = HEIGHT * Math.cos(SLOPE) + HALF_STANCE * Math.sin(SLOPE);
    expect(answer[MARGIN]).toBeCloseTo(level, 9);
    expect(answer[ABOVE_EDGE]).toBeCloseTo(above, 9);
    expect(answer[LEAST_LIFT]).toBeCloseTo(Math.hypot(HALF_STANCE, HEIGHT) - above, 9);
    vector(answer, OUTWARD).forEach((part, i) =>
      expect(part).toBeCloseTo([Math.cos(SLOPE), 0, Math.sin(SLOPE)][i]!, 9),
    );
  });

  it('tells that edge and a foot on it, in the frame of the ground', () => {
    const answer = marginWith([]);
    const [x, y, z] = vector(answer, EDGE_FOOT);
    expect(x).toBeCloseTo(HALF_STANCE, 9);
    expect(Math.abs(y!)).toBeCloseTo(HALF_STANCE, 9);
    expect(z).toBeCloseTo(-HEIGHT, 9);
    vector(answer, EDGE).forEach((part, i) => expect(part).toBeCloseTo([0, 1, 0][i]!, 9));
  });

  it.each([{ missing: [0, 1, 2] }, { missing: [1, 2, 3] }, { missing: [0, 2, 3] }])(
    'is minus the level distance to the one foot that is left, whose edge lies across it: $missing missing',
    ({ missing }) => {
      const answer = marginWith(missing);
      const [leg = 0] = [0, 1, 2, 3].filter((one) => !missing.includes(one));
      const downhill = leg === 0 || leg === 3 ? HALF_STANCE : -HALF_STANCE;
      const level = downhill * Math.cos(SLOPE) - HEIGHT * Math.sin(SLOPE);
      expect(answer[MARGIN]).toBeCloseTo(-Math.hypot(level, HALF_STANCE), 9);
      const [edge, outward] = [vector(answer, EDGE), vector(answer, OUTWARD)];
      // away from the foot and level; e x up = outward
      expect(outward[0]! * UP[0] + outward[2]! * UP[2]).toBeCloseTo(0, 9);
      cross(edge, UP).forEach((part, i) => expect(part).toBeCloseTo(outward[i]!, 9));
    },
  );
});
