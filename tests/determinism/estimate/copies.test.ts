import { describe, expect, it } from 'vitest';
import { createEstimate, estimateView, stepEstimate } from '../../../engine/estimate/index.ts';
import { parseFault, type Fault } from '../../../engine/faults/index.ts';
import { createReadings, readSensors } from '../../../engine/sensors/index.ts';
import { createHash, formatHash, mixFloat64 } from '../../../engine/math/hash.ts';
import type { DescentState } from '../../../engine/world/index.ts';
import { livelyDescent, plainSuite } from '../../support/kinematicTruth.ts';
import { HOVER, TRUE_MAP } from '../../support/plainEstimate.ts';
import { MOON } from '../../support/dropLander.ts';
import { START_SIGMA } from '../../../engine/estimate/index.ts';

const TRUTH = livelyDescent(900);

function faultOf(json: unknown): Fault {
  const parsed = parseFault(json);
  if (!parsed.ok) throw new Error(JSON.stringify(parsed.error));
  return parsed.value;
}

const FAULTS = [
  faultOf({ source: 'altimeter', kind: 'freeze', parameters: {}, fromTick: 200, toTick: 700 }),
  faultOf({ source: 'velocityRadar', kind: 'delay', parameters: { by: 1 }, fromTick: 300 }),
  faultOf({ source: 'attitudeReference', kind: 'noise', parameters: { sigma: 0.01 }, fromTick: 100 }),
];

function begin() {
  const start = { ...HOVER, height: 121, vx: 2.2, vy: -1.9 };
  const estimate = createEstimate({ gravity: MOON, map: TRUE_MAP, feet: [], start, startSigma: START_SIGMA });
  return { suite: plainSuite(17), readings: createReadings(4), estimate };
}

type Crew = ReturnType<typeof begin>;

function step({ suite, readings, estimate }: Crew, state: DescentState): void {
  readSensors(suite, state, FAULTS, readings);
  if (state.tick > 0) stepEstimate(estimate, readings, { surfaceCamera: 'under check' });
}

/** Of everything that decides what is believed next. */
function hash({ estimate, readings }: Crew): string {
  const state = createHash();
  for (const value of [...estimate.mean, ...estimate.covariance, ...estimate.past]) mixFloat64(state, value);
  for (const reading of Object.values(readings)) for (const value of reading.values) mixFloat64(state, value);
  return formatHash(state);
}

describe('sensors and estimate', () => {
  it('[ES6] [SE2] [FA1] go on the same in a copy that was made in the middle, with faults at work', () => {
    const [whole, first] = [begin(), begin()];
    for (const state of TRUTH) step(whole, state);
    for (const state of TRUTH.slice(0, 450)) step(first, state);
    const copy = structuredClone(first);
    // the original goes elsewhere meanwhile: nothing is shared
    for (const state of TRUTH.slice(450)) step(first, { ...state, vy: state.vy - 1 });
    for (const state of TRUTH.slice(450)) step(copy, state);
    expect(hash(copy)).toBe(hash(whole));
    expect(hash(first)).not.toBe(hash(whole));
  });

  it('[ES6] are the same beside another descent and however often they are looked at', () => {
    const [alone, watched, other] = [begin(), begin(), begin()];
    for (const state of TRUTH) step(alone, state);
    for (const state of TRUTH) {
      step(watched, state);
      step(other, { ...state, vx: state.vx + 1, y: state.y + 3 });
      estimateView(watched.estimate, watched.readings, {});
    }
    expect(hash(watched)).toBe(hash(alone));
  });

  it('[ES6] know nothing of the truth but through the readings: the same readings give the same estimate', () => {
    const [a, b] = [begin(), begin()];
    for (const state of TRUTH) {
      step(a, state);
      if (state.tick > 0) stepEstimate(b.estimate, structuredClone(a.readings), { surfaceCamera: 'under check' });
    }
    expect(hash({ ...b, readings: a.readings })).toBe(hash(a));
  });
});
