import { accept, refuse, type Result } from '../result.ts';
import { createDescent } from '../world/createDescent.ts';
import type { DescentEvent, DescentSetup } from '../world/descent.ts';
import type { Descent } from '../world/descentRecord.ts';
import { stepDescent } from '../world/stepDescent.ts';
import { hashSetup } from './hashSetup.ts';
import { markState } from './markState.ts';
import { MARKED_FIELDS, type Mark, type MarkedField, type Recording } from './recording.ts';

/** A recording being played back. */
export interface Playback {
  readonly recording: Recording;
  readonly descent: Descent;
  /** Place in the runs of inputs: which run, and how many of its ticks are behind. */
  run: number;
  behind: number;
  /** Index of the mark that comes next. */
  mark: number;
  /** The first place where the played state is not the recorded one. Playback goes on after it. */
  divergence: Divergence | undefined;
}

export interface Divergence {
  readonly tick: number;
  /** The first marked field that differs; 'hash' when only what is not marked differs. */
  readonly field: MarkedField | 'hash';
  readonly expected: string;
  readonly came: string;
}

export interface PlaybackRefusal {
  readonly code: 'replay/other-setup';
  readonly expected: string;
  readonly came: string;
}

/** Sets up the descent of a recording. Refused when the setup is not, to the bit, the one that was recorded. */
export function createPlayback(recording: Recording, setup: DescentSetup): Result<Playback, PlaybackRefusal> {
  const came = hashSetup(setup);
  const expected = recording.plan.setupHash;
  if (came !== expected) return refuse({ code: 'replay/other-setup', expected, came });
  const playback: Playback = {
    recording,
    descent: createDescent(setup),
    run: 0,
    behind: 0,
    mark: 0,
    divergence: undefined,
  };
  compareMark(playback);
  return accept(playback);
}

/** Plays one tick; undefined once every input has been played. */
export function stepPlayback(playback: Playback): readonly DescentEvent[] | undefined {
  const run = playback.recording.inputs[playback.run];
  if (run === undefined) return undefined;
  const events = stepDescent(playback.descent, run);
  playback.behind += 1;
  if (playback.behind === run.ticks) {
    playback.run += 1;
    playback.behind = 0;
  }
  compareMark(playback);
  return events;
}

/** Plays what is left and tells where it first diverged, if it did. */
export function playToEnd(playback: Playback): Divergence | undefined {
  while (stepPlayback(playback) !== undefined);
  return playback.divergence;
}

/** Compares the state with the mark of this tick, if there is one. */
function compareMark(playback: Playback): void {
  const expected = playback.recording.marks[playback.mark];
  if (expected === undefined || expected.tick !== playback.descent.tick) return;
  playback.mark += 1;
  const came = markState(playback.descent);
  playback.divergence ??= differenceOf(expected, came);
}

function differenceOf(expected: Mark, came: Mark): Divergence | undefined {
  const { tick } = came;
  for (const [i, field] of MARKED_FIELDS.entries()) {
    const [a, b] = [expected.values[i], came.values[i]];
    // text does not keep the sign of a zero; the hash below has it
    if (a !== b) return { tick, field, expected: String(a), came: String(b) };
  }
  if (expected.hash === came.hash) return undefined;
  return { tick, field: 'hash', expected: expected.hash, came: came.hash };
}
