import { parseCampaign, type Campaign } from '../../engine/dispersion/index.ts';
import { mapEnvelope, yawDirections, type EnvelopeQuestion } from '../../engine/envelope/index.ts';
import { accept } from '../../engine/result.ts';
import { findLander } from '../../levels/index.ts';
import { runCampaign } from '../../server/workers/runCampaign.ts';
import { runEnvelope } from '../../server/workers/runEnvelope.ts';
import type { BenchRow } from './row.ts';

const RUNS = 100_000;
const YAWS = 24;
const NODES = 41;

/** Campaigns on one thread and on two, and an envelope fine enough to be looked at. */
export async function benchSimulationRate(): Promise<readonly BenchRow[]> {
  const campaign = arrivals();
  const one = await seconds(() => runCampaign(campaign, { workers: 1 }));
  const two = await seconds(() => runCampaign(campaign, { workers: 2 }));
  const envelope = await seconds(() => runEnvelope(question(), { workers: 2 }));
  const map = mapEnvelope(envelope.result);
  return [
    {
      measure: `campaign of ${RUNS} touchdowns, two workers`,
      value: RUNS / two.taken,
      unit: 'touchdowns/s',
      reference: 'one worker',
      referenceValue: RUNS / one.taken,
    },
    {
      measure: `envelope ${NODES} x ${NODES}, worst of ${YAWS} yaws, two workers`,
      value: envelope.taken,
      unit: 's',
      reference: 'the same touchdowns at the rate of one worker above',
      referenceValue: map.runs / (RUNS / one.taken),
    },
    {
      measure: 'touchdowns for that envelope, refined',
      value: map.runs,
      unit: '-',
      reference: 'every node and every yaw',
      referenceValue: NODES * NODES * YAWS,
    },
  ];
}

function trivet(): NonNullable<ReturnType<typeof findLander>> {
  const lander = findLander('trivet');
  if (lander === undefined) throw new Error('The bench needs Trivet.');
  return lander;
}

function arrivals(): Campaign {
  const document = {
    format: 'kilter-campaign/1',
    title: 'Bench',
    lander: 'trivet',
    world: 'moon',
    method: 'plain',
    runs: RUNS,
    seed: 1,
    inputs: {
      horizontalSpeed: { kind: 'rayleigh', scale: 0.6 },
      travelAzimuthDeg: { kind: 'uniform', low: 0, high: 360 },
      descentRate: { kind: 'truncated normal', mean: 1.5, deviation: 0.3, low: 0.3, high: 3 },
      slopeDeg: { kind: 'rayleigh', scale: 3, high: 15 },
      friction: { kind: 'uniform', low: 0.5, high: 1 },
      yawDeg: { kind: 'uniform', low: 0, high: 360 },
    },
  };
  const parsed = parseCampaign(document, () => accept(trivet()));
  if (!parsed.ok) throw new Error(JSON.stringify(parsed.error));
  return parsed.value;
}

function question(): EnvelopeQuestion {
  return {
    lander: trivet(),
    conditions: {
      gravity: 1.62422,
      ground: { shape: { kind: 'plane', slope: (8 * Math.PI) / 180 }, friction: 0.8 },
    },
    horizontalSpeed: { from: -4, to: 4, count: NODES },
    descentRate: { from: 0, to: 4, count: NODES },
    directions: yawDirections(YAWS),
  };
}

async function seconds<Result>(
  run: () => Promise<Result>,
): Promise<{ readonly taken: number; readonly result: Result }> {
  const begun = process.hrtime.bigint();
  const result = await run();
  return { taken: Number(process.hrtime.bigint() - begun) / 1e9, result };
}
