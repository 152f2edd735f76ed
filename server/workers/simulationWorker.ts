/**
 * One worker thread of a long piece of work. What is to be worked on comes once, when the thread starts; then portions of it.
 * The engine is pure, so it does not matter which thread gets which portion.
 */
import { workerData } from 'piscina';
import { campaignSimulator, runBatch, runVarianceBatch, simulatedStackUp } from '../../engine/dispersion/index.ts';
import { runJob } from '../../engine/envelope/index.ts';
import type { Lander } from '../../engine/lander/index.ts';
import { formatProblem } from '../../engine/result.ts';
import {
  arrivalQuestion,
  leastLimit,
  sensitivityPoint,
  simulatedArrivals,
  tradePoint,
} from '../../engine/study/index.ts';
import type { TouchdownCase, TouchdownResult } from '../../engine/touchdown/index.ts';
import type { Portions, Work } from './work.ts';

// it came from our own pool by structured clone, not from outside
// eslint-disable-next-line typescript/no-unsafe-type-assertion -- see above
const work = workerData as Work;

export function campaign(portion: Portions['campaign']['portion']): Portions['campaign']['answer'] {
  if (work.kind !== 'campaign') throw notMeantFor('campaign');
  return runBatch(work.campaign, portion, simulatorOf(work.campaign.lander));
}

export function variance(portion: Portions['variance']['portion']): Portions['variance']['answer'] {
  if (work.kind !== 'variance') throw notMeantFor('variance');
  const rows = runVarianceBatch(work.plan, portion, simulatorOf(work.plan.campaign.lander));
  return { first: portion.first, rows };
}

export function envelope(portion: Portions['envelope']['portion']): Portions['envelope']['answer'] {
  if (work.kind !== 'envelope') throw notMeantFor('envelope');
  const { question } = work;
  const simulate = simulatorOf(question.lander);
  return portion.map((job) => runJob(question, job, simulate));
}

export function study(portion: Portions['study']['portion']): Portions['study']['answer'] {
  return { place: portion.place, answer: studied(portion) };
}

function studied(portion: Portions['study']['portion']): Portions['study']['answer']['answer'] {
  if (portion.kind === 'least') return leastLimit(portion.ask);
  if (portion.kind === 'trade') return tradePoint(portion.ask.asked, portion.ask.shape);
  if (portion.kind === 'sensitivity')
    return sensitivityPoint(portion.ask.asked, portion.ask.campaign, portion.ask.step);
  if (portion.kind === 'stackUp') return simulatedStackUp(portion.ask);
  const arrivals = simulatedArrivals(arrivalQuestion(portion.ask.asked));
  return typeof arrivals === 'string' ? arrivals : arrivals.toward(portion.ask.azimuthDeg);
}

function notMeantFor(kind: Work['kind']): Error {
  return new Error(`Broken contract: a thread started for ${work.kind} was given ${kind}`);
}

let simulator: ((touchdown: TouchdownCase) => TouchdownResult) | undefined;

/** Prepared at the first portion and kept: a thread serves one lander. */
function simulatorOf(lander: Lander): (touchdown: TouchdownCase) => TouchdownResult {
  if (simulator !== undefined) return simulator;
  const made = campaignSimulator(lander);
  if (!made.ok) throw new Error(made.error.map(formatProblem).join('; '));
  simulator = made.value;
  return simulator;
}
