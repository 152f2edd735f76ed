/**
 * The velocity envelope of a lander: which pairs of horizontal speed and descent rate it survives, and what ends it elsewhere.
 *
 * Incremental: `pendingJobs` lists what can be simulated now, in any order and by any number of workers; `enterAnswer` takes
 * the results; when the last one is in, the next jobs follow from all of them together, so the envelope is the same to the
 * bit however it was worked out. `advanceEnvelope` does it in one thread, a few runs at a time. To cancel, stop asking.
 */
import { assert } from '../assert.ts';
import { boundaryLines, locateCrossing, type BoundaryLine } from './boundary.ts';
import { checkQuestion, nodeSpeeds, type EnvelopeQuestion } from './envelopeQuestion.ts';
import { blockCorners, coarseBlocks, innerNode } from './refinement.ts';
import {
  askNodes,
  keyOf,
  moveOn,
  type Envelope,
  type EnvelopeJob,
  type EnvelopeJobAnswer,
  type EnvelopeStage,
} from './rounds.ts';
import { worstDirection, type SimulateEnvelope } from './worstDirection.ts';

const DEFAULT_COARSE = 4;

export function createEnvelope(question: EnvelopeQuestion): Envelope {
  checkQuestion(question);
  const size = { columns: question.horizontalSpeed.count, rows: question.descentRate.count };
  const blocks = coarseBlocks(size, question.coarse ?? DEFAULT_COARSE);
  const envelope: Envelope = {
    question,
    size,
    stage: 'scan',
    pending: new Map(),
    answered: 0,
    blocks,
    verdicts: new Map(),
    crossings: new Map(),
    runs: 0,
  };
  askNodes(
    envelope,
    blocks.flatMap((block) => [
      ...blockCorners(block, size),
      ...innerNode(block, size, question.coarse ?? DEFAULT_COARSE),
    ]),
  );
  return envelope;
}

/** What can be simulated now; empty when the envelope is done. */
export function pendingJobs(envelope: Envelope): readonly EnvelopeJob[] {
  return [...envelope.pending.values()];
}

/** Works out a job. Needs the question alone, so it can be done anywhere. */
export function runJob(question: EnvelopeQuestion, job: EnvelopeJob, simulate: SimulateEnvelope): EnvelopeJobAnswer {
  if (job.kind === 'crossing') return { kind: 'crossing', ...locateCrossing(question, job, simulate) };
  const verdict = worstDirection(question, nodeSpeeds(question, job.node), simulate);
  return { kind: 'node', node: job.node, ...verdict };
}

/** Takes an answer to a pending job, in any order. */
export function enterAnswer(envelope: Envelope, answer: EnvelopeJobAnswer): void {
  const key = keyOf(answer);
  assert(envelope.pending.delete(key), `nobody asked for ${key}`);
  envelope.answered++;
  envelope.runs += answer.runs;
  if (answer.kind === 'crossing') {
    const { kind: _, ...crossing } = answer;
    envelope.crossings.set(key, crossing);
  } else {
    const { kind: _, node, ...verdict } = answer;
    envelope.verdicts.set(node, verdict);
  }
  if (envelope.pending.size === 0) moveOn(envelope);
}

/** Works on in this thread until about so many touchdowns were simulated, or the envelope is done. Returns whether it is. */
export function advanceEnvelope(envelope: Envelope, simulate: SimulateEnvelope, runs: number): boolean {
  const end = envelope.runs + runs;
  while (envelope.stage !== 'done' && envelope.runs < end) {
    const [job] = envelope.pending.values();
    assert(job !== undefined, 'an envelope that is not done has something to do');
    enterAnswer(envelope, runJob(envelope.question, job, simulate));
  }
  return envelope.stage === 'done';
}

/** For a progress bar: what is done of what is known to be needed in this stage; later rounds may add to it. */
export function envelopeProgress(envelope: Envelope): {
  readonly stage: EnvelopeStage;
  readonly answered: number;
  readonly known: number;
  readonly runs: number;
} {
  const { stage, answered, pending, runs } = envelope;
  return { stage, answered, known: answered + pending.size, runs };
}

/** Lines through the crossings found so far. */
export function envelopeLines(envelope: Envelope): readonly BoundaryLine[] {
  return boundaryLines(envelope.size, [...envelope.crossings.values()]);
}
