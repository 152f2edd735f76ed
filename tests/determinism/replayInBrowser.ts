import { createPlayback, parseRecordingText, playToEnd, type Divergence } from '../../engine/replay/index.ts';
import { formatProblem } from '../../engine/result.ts';
import { hashDescent } from '../../engine/world/index.ts';
import { firstLanding } from '../../levels/index.ts';
import { flyGolden, GOLDEN_RUNS, type FlownRun } from '../replay/goldenRuns.ts';

/** What a page finds on globalThis once this module has run in it. */
export interface ReplayBench {
  /** Every golden run, flown here. */
  readonly flown: readonly FlownRun[];
  /** Plays a recording of the first landing back, here. */
  readonly playBack: (text: string) => PlayedBack;
}

export interface PlayedBack {
  readonly ticks: number;
  readonly hash: string;
  readonly divergence: Divergence | undefined;
}

export function playBack(text: string): PlayedBack {
  const recording = parseRecordingText(text);
  if (!recording.ok) throw new Error(recording.error.map(formatProblem).join('; '));
  const playback = createPlayback(recording.value, firstLanding(recording.value.plan.seed).setup);
  if (!playback.ok) throw new Error(`expected setup ${playback.error.expected}, came ${playback.error.came}`);
  const divergence = playToEnd(playback.value);
  const { descent } = playback.value;
  return { ticks: descent.tick, hash: hashDescent(descent), divergence };
}

declare global {
  var replayBench: ReplayBench | undefined;
}

globalThis.replayBench = { flown: GOLDEN_RUNS.map(flyGolden), playBack };
