import {
  addBatch,
  createTally,
  factorShares,
  type Campaign,
  type CampaignTally,
  type FactorShares,
  type VariancePlan,
} from '../../engine/dispersion/index.ts';
import { defaultWorkers, openPool, type LongWork } from './pool.ts';
import type { Range } from './work.ts';

/** Most cases in a portion: the handing over, some 0.5 ms, costs the threads nothing, and progress still shows. */
const LARGEST_PORTION = 200;

/** Portions for each thread, at least: the last ones end within some hundredth of the whole time of each other. */
const LEAST_PORTIONS = 50;

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
    await pool.answerAll(portions(campaign.runs, pool.workers), take, signal);
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
      portions(plan.runs, pool.workers),
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

function* portions(runs: number, workers: number): Generator<Range> {
  const portion = Math.min(LARGEST_PORTION, Math.ceil(runs / (LEAST_PORTIONS * workers)));
  for (let first = 0; first < runs; first += portion) yield { first, count: Math.min(portion, runs - first) };
}
