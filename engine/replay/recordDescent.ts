import { assert } from '../assert.ts';
import { equalsControlInput } from '../input/controlInput.ts';
import { TICK_RATE } from '../world/constants.ts';
import { createDescent } from '../world/createDescent.ts';
import type { ControlInput, DescentSetup } from '../world/descent.ts';
import type { Descent } from '../world/descentRecord.ts';
import { stepDescent } from '../world/stepDescent.ts';
import { hashSetup } from './hashSetup.ts';
import { markState } from './markState.ts';
import {
  MARK_EVERY,
  PHYSICS_REVISION,
  RECORDING_FORMAT,
  type InputRun,
  type Mark,
  type RecordedPlan,
  type Recording,
} from './recording.ts';

/** A recording being made. */
export interface Recorder {
  readonly plan: RecordedPlan;
  readonly inputs: InputRun[];
  readonly marks: Mark[];
}

/** Where a recorded setup comes from, without its hash. */
export type PlanOrigin = Omit<RecordedPlan, 'setupHash'>;

/** Begins to record a descent that has not been stepped yet. */
export function startRecording(origin: PlanOrigin, descent: Descent): Recorder {
  assert(descent.tick === 0, 'a recording begins at the first tick');
  const { landerId, siteId, worldId, seed } = origin;
  const plan = { landerId, siteId, worldId, seed, setupHash: hashSetup(descent.setup) };
  return { plan, inputs: [], marks: [markState(descent)] };
}

/** Takes the input of the coming tick: call it before the step, or a step that fails leaves no trace of what it was given. */
export function recordInput(recorder: Recorder, input: ControlInput): void {
  const last = recorder.inputs.at(-1);
  if (last !== undefined && equalsControlInput(last, input))
    recorder.inputs[recorder.inputs.length - 1] = { ...last, ticks: last.ticks + 1 };
  else recorder.inputs.push({ ticks: 1, thrustPercent: input.thrustPercent, tiltDeg: input.tiltDeg });
}

/** Marks the state after a step where one is due. */
export function recordState(recorder: Recorder, descent: Descent): void {
  if (descent.tick % MARK_EVERY === 0) recorder.marks.push(markState(descent));
}

/** The recording up to now, with the present state as its last mark. */
export function finishRecording(recorder: Recorder, descent: Descent): Recording {
  const marks = [...recorder.marks];
  if (marks.at(-1)?.tick !== descent.tick) marks.push(markState(descent));
  return {
    format: RECORDING_FORMAT,
    physics: PHYSICS_REVISION,
    tickRate: TICK_RATE,
    plan: recorder.plan,
    inputs: [...recorder.inputs],
    marks,
  };
}

/** The recording of a descent whose inputs are already known, one a tick; those after the outcome are left out. */
export function recordRun(origin: PlanOrigin, setup: DescentSetup, inputs: readonly ControlInput[]): Recording {
  const descent = createDescent(setup);
  const recorder = startRecording(origin, descent);
  for (const input of inputs) {
    if (descent.outcome !== undefined) break;
    recordInput(recorder, input);
    stepDescent(descent, input);
    recordState(recorder, descent);
  }
  return finishRecording(recorder, descent);
}
