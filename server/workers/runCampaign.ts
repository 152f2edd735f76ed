import {
  addBatch,
  createTally,
  factorShares,
  type Campaign,
  type CampaignTally,
  type FactorShares,
  type VariancePlan,
} from '../../engine/index.ts';
import { defaultWorkers, openPool, type LongWork } from './pool.ts';
import type { Range } from './work.ts';

/** Cases in a portion: long enough that handing it over costs nothing, short enough to show progress. */
const PORTION = 50;

/** Runs a campaign on worker threads. An aborted one comes back with fewer cases done. */
export async function runCampaign(campaign: Campaign, options: LongWork = {}): Promise<CampaignTally> {
  const { workers = defaultWorkers(), signal, onProgress } = options;
  const tally = createTally(campaign);
  const pool = openPool({ kind: 'campaign', campaign }, workers);
  try {
    const take = (batch: Parameters<typeof addBatch>[1]): void => {
      addBatch(tally, batch);
      onProgress?.({ done: tally.done, known: campaign.runs });
    };
    await pool.answerAll(ranges(campaign.runs), take, signal);
    return tally;
  } finally {
    await pool.close();
  }
}

/** Runs a variance design on worker threads; undefined when it was aborted, since shares need every run. */
export async function runVariance(
  plan: VariancePlan,
  options: LongWork = {},
): Promise<readonly FactorShares[] | undefined> {
  const { workers = defaultWorkers(), signal, onProgress } = options;
  const rows = new Float64Array(2 * plan.runs);
  let done = 0;
  const pool = openPool({ kind: 'variance', plan }, workers);
  try {
    await pool.answerAll(
      ranges(plan.runs),
      (answer) => {
        rows.set(answer.rows, 2 * answer.first);
        done += answer.rows.length / 2;
        onProgress?.({ done, known: plan.runs });
      },
      signal,
    );
    return done === plan.runs ? factorShares(plan, rows) : undefined;
  } finally {
    await pool.close();
  }
}

function* ranges(runs: number): Generator<Range> {
  for (let first = 0; first < runs; first += PORTION) yield { first, count: Math.min(PORTION, runs - first) };
}
