import { parseRecord, replayRecord, type Divergence } from '../../engine/record/index.ts';
import { formatProblem } from '../../engine/result.ts';
import { playedModel } from '../../engine/table/index.ts';
import { firstLanding } from '../../levels/index.ts';
import { flyGolden, GOLDEN_RUNS, type FlownRun } from '../replay/goldenRuns.ts';

/** What a page finds on globalThis once this module has run in it. */
export interface ReplayBench {
  /** Every golden run, flown here. */
  readonly flown: readonly FlownRun[];
  /** Replays the record of a first landing, here. */
  readonly replay: (text: string) => Replayed;
}

export interface Replayed {
  readonly ticks: number;
  readonly marks: number;
  readonly divergence: Divergence | undefined;
}

export function replay(text: string): Replayed {
  const record = parseRecord(text);
  if (!record.ok) throw new Error(record.error.map(formatProblem).join('; '));
  const plan = firstLanding(record.value.header.plan.choice.seed);
  const replayed = replayRecord(record.value, { plan, model: playedModel });
  if (!replayed.ok) throw new Error(`expected setup ${replayed.error.recorded}, laid out ${replayed.error.laidOut}`);
  const { table, marks, divergence } = replayed.value;
  return { ticks: table.state.tick, marks, divergence };
}

declare global {
  var replayBench: ReplayBench | undefined;
}

globalThis.replayBench = { flown: GOLDEN_RUNS.map(flyGolden), replay };
