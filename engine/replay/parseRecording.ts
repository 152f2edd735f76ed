import { createProblemList, describe, readFields, readList, readNumber, readText, report } from '../fieldReader.ts';
import type { ProblemList } from '../fieldReader.ts';
import { MAX_TILT_DEG } from '../input/controlInput.ts';
import { accept, refuse, type FieldProblem, type Result } from '../result.ts';
import { TICK_RATE } from '../world/constants.ts';
import {
  MARK_EVERY,
  MARKED_FIELDS,
  PHYSICS_REVISION,
  RECORDING_FORMAT,
  type InputRun,
  type Mark,
  type RecordedPlan,
  type Recording,
} from './recording.ts';

/** Longest recording that is read [ticks]: ten minutes. */
export const MOST_TICKS = 10 * 60 * TICK_RATE;
/** Longest text that is read, in UTF-16 code units: ten minutes of marks, and a change of input at every second tick. */
export const MOST_TEXT = 2 * 1024 * 1024;

const ID = { least: 1, most: 32, pattern: /^[a-z][a-z0-9-]*$/, words: 'a to z first, then a to z, 0 to 9 and -' };
const HASH = { least: 16, most: 16, pattern: /^[0-9a-f]*$/, words: '0 to 9 and a to f' };
const SEED = { least: 0, most: Number.MAX_SAFE_INTEGER, unit: '-', whole: true };
const TICKS = { least: 1, most: MOST_TICKS, unit: 'ticks', whole: true };
const TICK = { least: 0, most: MOST_TICKS, unit: 'ticks', whole: true };
const THRUST = { least: 0, most: 100, unit: '%', whole: true };
const TILT = { least: -MAX_TILT_DEG, most: MAX_TILT_DEG, unit: 'deg', whole: true };

/** Reads a recording from text, within a budget of size that is looked at first. */
export function parseRecordingText(text: string): Result<Recording, readonly FieldProblem[]> {
  const list = createProblemList('recording');
  if (text.length > MOST_TEXT) {
    report(list, 'too-large', { path: '', expected: `at most ${MOST_TEXT} characters`, came: `${text.length}` });
    return refuse(list.problems);
  }
  try {
    return parseRecording(JSON.parse(text));
  } catch {
    report(list, 'not-json', { path: '', expected: 'JSON text', came: 'text that is not JSON' });
    return refuse(list.problems);
  }
}

export function formatRecording(recording: Recording): string {
  return JSON.stringify(recording);
}

/** A recording that plays back under this very physics, or everything that is wrong with the data. */
export function parseRecording(json: unknown): Result<Recording, readonly FieldProblem[]> {
  const list = createProblemList('recording');
  const recording = readRecording(list, json);
  if (recording !== undefined && list.problems.length === 0) checkMarks(list, recording);
  return recording === undefined || list.problems.length > 0 ? refuse(list.problems) : accept(recording);
}

function readRecording(list: ProblemList, json: unknown): Recording | undefined {
  const fields = readFields(list, json, '', ['format', 'physics', 'tickRate', 'plan', 'inputs', 'marks']);
  if (fields === undefined) return undefined;
  // another format, physics or tick rate cannot be played back truly, whatever the rest says
  const fixed = { format: RECORDING_FORMAT, physics: PHYSICS_REVISION, tickRate: TICK_RATE } as const;
  for (const name of ['format', 'physics', 'tickRate'] as const) {
    if (fields[name] === fixed[name] || fields[name] === undefined) continue;
    return report(list, 'other-version', {
      path: name,
      expected: JSON.stringify(fixed[name]),
      came: describe(fields[name]),
    });
  }
  const plan = readPlan(list, fields.plan);
  const runs = { least: 0, most: MOST_TICKS, of: 'inputs' };
  const inputs = readList(list, fields.inputs, 'inputs', runs, (item, path) => readRun(list, item, path));
  const count = { least: 1, most: MOST_TICKS / MARK_EVERY + 2, of: 'marks' };
  const marks = readList(list, fields.marks, 'marks', count, (item, path) => readMark(list, item, path));
  return plan === undefined || inputs === undefined || marks === undefined
    ? undefined
    : { ...fixed, plan, inputs, marks };
}

function readPlan(list: ProblemList, value: unknown): RecordedPlan | undefined {
  if (value === undefined) return undefined;
  const fields = readFields(list, value, 'plan', ['landerId', 'siteId', 'worldId', 'seed', 'setupHash']);
  const landerId = readText(list, fields?.landerId, 'plan.landerId', ID);
  const siteId = readText(list, fields?.siteId, 'plan.siteId', ID);
  const worldId = readText(list, fields?.worldId, 'plan.worldId', ID);
  const seed = readNumber(list, fields?.seed, 'plan.seed', SEED);
  const setupHash = readText(list, fields?.setupHash, 'plan.setupHash', HASH);
  if (landerId === undefined || siteId === undefined || worldId === undefined) return undefined;
  return seed === undefined || setupHash === undefined ? undefined : { landerId, siteId, worldId, seed, setupHash };
}

function readRun(list: ProblemList, value: unknown, path: string): InputRun | undefined {
  const fields = readFields(list, value, path, ['ticks', 'thrustPercent', 'tiltDeg']);
  const ticks = readNumber(list, fields?.ticks, `${path}.ticks`, TICKS);
  const thrustPercent = readNumber(list, fields?.thrustPercent, `${path}.thrustPercent`, THRUST);
  const tiltDeg = readNumber(list, fields?.tiltDeg, `${path}.tiltDeg`, TILT);
  return ticks === undefined || thrustPercent === undefined || tiltDeg === undefined
    ? undefined
    : { ticks, thrustPercent, tiltDeg };
}

function readMark(list: ProblemList, value: unknown, path: string): Mark | undefined {
  const fields = readFields(list, value, path, ['tick', 'hash', 'values']);
  const tick = readNumber(list, fields?.tick, `${path}.tick`, TICK);
  const hash = readText(list, fields?.hash, `${path}.hash`, HASH);
  const count = { least: MARKED_FIELDS.length, most: MARKED_FIELDS.length, of: 'numbers' };
  const values = readList(list, fields?.values, `${path}.values`, count, (item, itemPath) => {
    if (typeof item === 'number' && Number.isFinite(item)) return item;
    return report(list, 'not-a-number', { path: itemPath, expected: 'a finite number', came: describe(item) });
  });
  return tick === undefined || hash === undefined || values === undefined ? undefined : { tick, hash, values };
}

/** Marks stand where they are due, and the inputs end with the last of them. */
function checkMarks(list: ProblemList, { inputs, marks }: Recording): void {
  const total = inputs.reduce((sum, { ticks }) => sum + ticks, 0);
  if (total > MOST_TICKS)
    report(list, 'too-long', { path: 'inputs', expected: `at most ${MOST_TICKS} ticks`, came: `${total}` });
  for (const [i, { tick }] of marks.entries()) {
    const due = Math.min(i * MARK_EVERY, total);
    if (tick === due) continue;
    report(list, 'mark-out-of-place', { path: `marks[${i}].tick`, expected: `${due}`, came: `${tick}` });
    return;
  }
  const last = marks.at(-1)?.tick;
  if (last !== total)
    report(list, 'inputs-without-end', { path: 'inputs', expected: `${last} ticks in all`, came: `${total}` });
}
