import { describe, expect, it } from 'vitest';
import { planVariance, summarize } from '../../../engine/dispersion/index.ts';
import { advanceEnvelope, createEnvelope, mapEnvelope } from '../../../engine/envelope/index.ts';
import { prepareTouchdown, runTouchdown } from '../../../engine/touchdown/index.ts';
import { runCampaign, runVariance } from '../../../server/workers/runCampaign.ts';
import { runEnvelope } from '../../../server/workers/runEnvelope.ts';
import type { WorkProgress } from '../../../server/workers/pool.ts';
import { plainCampaign } from '../../support/plainCampaign.ts';
import { plainQuestion } from '../../support/plainEnvelope.ts';

const QUESTION = plainQuestion({
  horizontalSpeed: { from: -3, to: 3, count: 9 },
  descentRate: { from: 1, to: 3, count: 5 },
  halvings: 1,
});

describe('long work on threads', () => {
  it('[DI9] sums a campaign up to the same bits with one worker, with two and with three', async () => {
    const campaign = plainCampaign({ runs: 330 });
    const tallies = [];
    for (const workers of [1, 2, 3]) tallies.push(await runCampaign(campaign, { workers }));
    const [one, ...others] = tallies;
    expect(one?.done).toBe(330);
    expect(new Set(one?.outcomes).size).toBeGreaterThan(1);
    for (const other of others) {
      expect(other.measures).toEqual(one?.measures);
      expect(summarize(other)).toEqual(one && summarize(one));
    }
  });

  it('[EN4] works an envelope out on threads as it does alone', async () => {
    const kernel = prepareTouchdown(QUESTION.lander);
    if (!kernel.ok) throw new Error('no kernel');
    const alone = createEnvelope(QUESTION);
    advanceEnvelope(alone, (touchdown) => runTouchdown(kernel.value, touchdown), Infinity);
    const shared = await runEnvelope(QUESTION, { workers: 2 });
    expect(mapEnvelope(shared)).toMatchObject({ nodes: mapEnvelope(alone).nodes, runs: alone.runs, isDone: true });
    expect(shared.crossings).toEqual(alone.crossings);
  });

  it('[DI12] shares the runs of a variance design out and puts them back in order', async () => {
    const plan = planVariance(plainCampaign(), 16);
    const one = await runVariance(plan, { workers: 1 });
    const two = await runVariance(plan, { workers: 2 });
    expect(one).toHaveLength(3);
    expect(two).toEqual(one);
  });

  it('tells how far it is, up to the end', async () => {
    const seen: WorkProgress[] = [];
    await runCampaign(plainCampaign({ runs: 120 }), { workers: 2, onProgress: (progress) => seen.push(progress) });
    expect(seen.map(({ done }) => done)).toEqual(seen.map(({ done }) => done).toSorted((a, b) => a - b));
    expect(seen.at(-1)).toEqual({ done: 120, known: 120 });
    expect(seen.length).toBeGreaterThan(1);
  });

  it('ends cleanly when it is aborted, with what was done so far and a summary that says so', async () => {
    const controller = new AbortController();
    const tally = await runCampaign(plainCampaign({ runs: 50_000 }), {
      workers: 2,
      signal: controller.signal,
      onProgress: ({ done }) => {
        if (done >= 100) controller.abort();
      },
    });
    expect(tally.done).toBeGreaterThanOrEqual(100);
    expect(tally.done).toBeLessThan(1000);
    expect(summarize(tally)).toMatchObject({ isPartial: true, done: tally.done, asked: 50_000 });
  });

  it('fails with the reason when a lander cannot be simulated', async () => {
    const campaign = plainCampaign({ runs: 10 });
    const weightless = {
      ...campaign,
      lander: {
        ...campaign.lander,
        parts: campaign.lander.parts.map((part) => ({ ...part, shape: { kind: 'point' as const } })),
      },
    };
    await expect(runCampaign(weightless, { workers: 1 })).rejects.toThrow(/moment of inertia/);
  });
});
