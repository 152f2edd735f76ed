import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  addressOfState,
  FIRST_STATE,
  stateInAddress,
  studyOf,
  type BenchState,
} from '../../../client/workbench/benchState.ts';
import { reshape } from '../../../engine/study/index.ts';
import { WORLDS } from '../../../engine/worlds.ts';
import { LANDERS } from '../../../levels/index.ts';

const states: fc.Arbitrary<BenchState> = fc
  .record({
    base: fc.constantFrom(...LANDERS),
    isFile: fc.boolean(),
    world: fc.constantFrom(...WORLDS.map(({ id }) => id)),
    slopeDeg: fc.double({ min: 0, max: 45, noNaN: true }),
    friction: fc.double({ min: 0, max: 3, noNaN: true }),
    descentRate: fc.double({ min: 0, max: 12, noNaN: true }),
    horizontalSpeed: fc.double({ min: -12, max: 12, noNaN: true }),
    missing: fc.uniqueArray(fc.nat(3), { maxLength: 1 }),
    fill: fc.option(fc.double({ min: 0, max: 1, noNaN: true }), { nil: undefined }),
    stroke: fc.option(fc.double({ min: 0.2, max: 0.6, noNaN: true }), { nil: undefined }),
  })
  .map(({ base, isFile, world, missing, fill, stroke, ...arrival }) => ({
    lander: isFile ? 'file' : base.id,
    file: isFile ? base : undefined,
    shape: { ...(stroke !== undefined && { stroke }), ...(fill !== undefined && { fill }) },
    missing,
    world,
    // an address knows no negative zero
    arrival: { ...arrival, horizontalSpeed: arrival.horizontalSpeed + 0 },
  }));

describe('the address of the workbench', () => {
  it('opens exactly what was set, both cases, also a lander from a file', () => {
    fc.assert(
      fc.property(states, fc.option(states, { nil: undefined }), (state, beside) => {
        fc.pre(studyOf(state).ok && (beside === undefined || studyOf(beside).ok));
        const read = stateInAddress(addressOfState(state, beside));
        expect(read.problems).toEqual([]);
        expect(read.state).toEqual(state);
        expect(read.beside).toEqual(beside);
      }),
      { seed: 11, numRuns: 200 },
    );
  });

  it('names each field that it cannot read, and stands there as at the start', () => {
    const read = stateInAddress({
      search: '?workbench&lander=nobody&world=pluton&slopeDeg=steep&descentRate=-1&missing=a&fill=2',
      hash: '',
    });
    expect(read.problems.map((line) => line.split(':')[0])).toEqual([
      'lander',
      'world',
      'slopeDeg',
      'descentRate',
      'missing',
      'fill',
    ]);
    expect(read.state).toEqual(FIRST_STATE);
  });

  it('asks the engine about the lander as it was changed', () => {
    const asked = studyOf({ ...FIRST_STATE, shape: { footRadius: 2.8 } });
    const shaped = reshape(
      LANDERS.find(({ id }) => id === 'trivet')!,
      { footRadius: 2.8 },
    );
    expect(asked.ok && shaped.ok && asked.value.lander).toEqual(shaped.ok && shaped.value);
  });
});
