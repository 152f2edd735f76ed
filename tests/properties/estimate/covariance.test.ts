import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  addState,
  addVariance,
  measureState,
  resetState,
  scaleState,
  varianceAlong,
} from '../../../engine/estimate/covariance.ts';
import { STATES } from '../../../engine/estimate/state.ts';
import { parseFault, type Fault } from '../../../engine/faults/index.ts';
import { JUDGMENTS, type Judgments } from '../../../engine/estimate/index.ts';
import { SOURCES } from '../../../engine/sensors/index.ts';
import { believe, flyTruly } from '../../support/believedDescent.ts';
import { asymmetry, cholesky, correlations } from '../../support/covarianceChecks.ts';

const RUNS = { seed: 20261130, numRuns: 300 };

const state = fc.nat({ max: STATES - 1 });
const magnitude = fc.integer({ min: -6, max: 3 }).map((power) => 10 ** power);
const row = fc.array(fc.double({ min: -2, max: 2, noNaN: true }), { minLength: STATES, maxLength: STATES });
const step = fc.oneof(
  fc.record({
    kind: fc.constant('add' as const),
    to: state,
    from: state,
    factor: fc.double({ min: -2, max: 2, noNaN: true }),
  }),
  fc.record({ kind: fc.constant('variance' as const), to: state, size: magnitude }),
  fc.record({ kind: fc.constant('scale' as const), to: state, factor: fc.double({ min: 0.1, max: 1, noNaN: true }) }),
  fc.record({ kind: fc.constant('measure' as const), row, size: magnitude }),
  fc.record({ kind: fc.constant('reset' as const), to: state, size: magnitude }),
);
type Step = typeof step extends fc.Arbitrary<infer Value> ? Value : never;

function start(variances: readonly number[]): Float64Array {
  const covariance = new Float64Array(STATES * STATES);
  for (const [i, variance] of variances.entries()) covariance[i * STATES + i] = variance;
  return covariance;
}

function take(covariance: Float64Array, taken: Step): void {
  const gain = new Float64Array(STATES);
  if (taken.kind === 'variance') addVariance(covariance, taken.to, taken.size);
  else if (taken.kind === 'scale') scaleState(covariance, taken.to, taken.factor);
  else if (taken.kind === 'measure') measureState(covariance, Float64Array.from(taken.row), taken.size, gain);
  else if (taken.kind === 'reset') resetState(covariance, taken.to, taken.size);
  else if (taken.to !== taken.from) addState(covariance, taken.to, taken.from, taken.factor);
}

/** Plain product of square matrices, for comparison. */
function times(a: readonly number[][], b: readonly number[][]): number[][] {
  return a.map((left) => b[0]!.map((_, j) => left.reduce((sum, value, k) => sum + value * b[k]![j]!, 0)));
}

function rows(covariance: Float64Array): number[][] {
  return Array.from({ length: STATES }, (_, i) => Array.from(covariance.subarray(i * STATES, (i + 1) * STATES)));
}

function transposed(a: readonly number[][]): number[][] {
  return a[0]!.map((_, j) => a.map((line) => line[j]!));
}

function unit(): number[][] {
  return Array.from({ length: STATES }, (_, i) => Array.from({ length: STATES }, (_, j) => Number(i === j)));
}

describe('the covariance', () => {
  it('[ES3] stays symmetric to the bit, and positive, whatever is done to it', () => {
    fc.assert(
      fc.property(
        fc.array(magnitude, { minLength: STATES, maxLength: STATES }),
        fc.array(step, { minLength: 1, maxLength: 60 }),
        (variances, steps) => {
          const covariance = start(variances);
          for (const taken of steps) take(covariance, taken);
          expect(asymmetry(covariance, STATES)).toBe(0);
          // rounding may cost a few units in the last place of correlations: that much is added before the test
          const scaled = correlations(covariance, STATES).map(
            (value, i) => value + (i % (STATES + 1) === 0 ? 1e-9 : 0),
          );
          expect(cholesky(scaled, STATES, STATES)).toBeDefined();
        },
      ),
      RUNS,
    );
  });

  it('[ES3] moves as E·P·Eᵀ says', () => {
    fc.assert(
      fc.property(fc.array(step, { minLength: 5, maxLength: 20 }), state, state, (steps, to, from) => {
        fc.pre(to !== from);
        const covariance = start(Array.from({ length: STATES }, () => 1));
        for (const taken of steps) take(covariance, taken);
        const move = unit();
        move[to]![from] = 0.7;
        const expected = times(times(move, rows(covariance)), transposed(move));
        const largest = Math.max(...covariance.map(Math.abs));
        addState(covariance, to, from, 0.7);
        for (const [i, line] of rows(covariance).entries())
          for (const [j, value] of line.entries())
            expect(Math.abs(value - expected[i]![j]!)).toBeLessThan(1e-12 * largest);
      }),
      RUNS,
    );
  });

  it('[ES3] after a measurement is no larger in any direction, and the measured sum is as certain as both together', () => {
    fc.assert(
      fc.property(
        fc.array(step, { minLength: 5, maxLength: 20 }),
        row,
        row,
        magnitude,
        (steps, measured, other, size) => {
          const covariance = start(Array.from({ length: STATES }, () => 1));
          for (const taken of steps) take(covariance, taken);
          const [along, across] = [Float64Array.from(measured), Float64Array.from(other)];
          const before = varianceAlong(covariance, along);
          const beside = varianceAlong(covariance, across);
          const largest = Math.max(...covariance.map(Math.abs));
          measureState(covariance, along, size, new Float64Array(STATES));
          // two independent knowledges of one number: 1/σ² add up
          const expected = (before * size) / (before + size);
          expect(Math.abs(varianceAlong(covariance, along) - expected)).toBeLessThan(1e-10 * Math.max(1, largest));
          expect(varianceAlong(covariance, across)).toBeLessThan(beside + 1e-10 * Math.max(1, largest));
        },
      ),
      RUNS,
    );
  });
});

describe('an estimate in trouble', () => {
  const descent = flyTruly('ravel-bank', 2);
  const sensor = fc.constantFrom('inertialUnit', 'altimeter', 'velocityRadar', 'attitudeReference', 'surfaceCamera');
  const size = fc.double({ min: -500, max: 500, noNaN: true });
  const kind = fc.oneof(
    fc.constantFrom('noData', 'freeze', 'falseValid', 'falseInvalid').map((name) => ({ kind: name, parameters: {} })),
    size.map((value) => ({ kind: 'bias', parameters: { size: value } })),
    size.map((value) => ({ kind: 'drift', parameters: { rate: value } })),
    size.map((value) => ({ kind: 'noise', parameters: { sigma: Math.abs(value) } })),
    size.map((value) => ({ kind: 'spike', parameters: { size: value, chance: 0.3 } })),
    size.map((value) => ({ kind: 'delay', parameters: { by: Math.abs(value) / 200 } })),
  );
  const fault = fc
    .record({ source: sensor, from: fc.nat({ max: 1500 }), kind })
    .map(({ source, from, kind }): Fault => {
      const parsed = parseFault({ source, ...kind, fromTick: from });
      if (!parsed.ok) throw new Error(JSON.stringify(parsed.error));
      return parsed.value;
    });
  const judgments = fc.dictionary(
    fc.constantFrom(...SOURCES),
    fc.constantFrom(...JUDGMENTS),
  ) as fc.Arbitrary<Judgments>;

  it('[ES3] stays finite, symmetric and positive through any faults and judgments', () => {
    fc.assert(
      fc.property(
        fc.array(fault, { minLength: 1, maxLength: 4 }),
        fc.array(judgments, { minLength: 4, maxLength: 4 }),
        fc.nat({ max: 1e6 }),
        (faults, judged, seed) => {
          const judgmentsAt = (tick: number): Judgments => judged[Math.floor(tick / 500) % 4]!;
          const { mean, covariance } = believe(descent, { seed, faults, judgmentsAt }, ({ estimate, state }) => {
            if (state.tick % 100 !== 0) return;
            expect(estimate.covariance.every(Number.isFinite) && estimate.mean.every(Number.isFinite)).toBe(true);
            expect(asymmetry(estimate.covariance, STATES)).toBe(0);
          });
          const scaled = correlations(covariance, STATES).map(
            (value, i) => value + (i % (STATES + 1) === 0 ? 1e-9 : 0),
          );
          expect(cholesky(scaled, STATES, STATES)).toBeDefined();
          expect(mean.length).toBe(STATES);
        },
      ),
      { ...RUNS, numRuns: 60 },
    );
  });
});
