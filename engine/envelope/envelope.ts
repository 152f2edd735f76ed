/**
 * The velocity envelope of a lander: which pairs of horizontal speed and descent rate it survives, and what ends it elsewhere.
 *
 * Incremental: `pendingJobs` lists what can be simulated now, in any order and by any number of workers; `enterAnswer` takes
 * the results; when the last one is in, the next jobs follow from all of them together, so the envelope is the same to the
 * bit however it was worked out. `advanceEnvelope` does it in one thread, a few runs at a time. To cancel, stop asking.
 */
import { assert } from '../assert.ts';
import { boundaryLines, locateCrossing, type BoundaryLine, type Crossing, type CrossedStep } from './boundary.ts';
import { checkQuestion, nodeSpeeds, type EnvelopeClass, type EnvelopeQuestion } from './envelopeQuestion.ts';
import { blockCorners, blockNodes, coarseBlocks, cutBlock, isSingle, type Block, type GridSize } from './refinement.ts';
import { worstDirection, type NodeVerdict, type SimulateEnvelope } from './worstDirection.ts';

/** scan: nodes of the grid. fill: the nodes left, where every one is asked for. boundary: crossings. */
export const ENVELOPE_STAGES = ['scan', 'fill', 'boundary', 'done'] as const;
export type EnvelopeStage = (typeof ENVELOPE_STAGES)[number];

export type EnvelopeJob =
  | { readonly kind: 'node'; readonly node: number }
  | ({ readonly kind: 'crossing'; readonly class: EnvelopeClass; readonly direction: number } & CrossedStep);

export type EnvelopeJobAnswer =
  | ({ readonly kind: 'node'; readonly node: number } & NodeVerdict)
  | ({ readonly kind: 'crossing' } & Crossing);

/** Changed by enterAnswer alone. */
export interface Envelope {
  readonly question: EnvelopeQuestion;
  readonly size: GridSize;
  stage: EnvelopeStage;
  /** Of the stage, not answered yet, by key. */
  readonly pending: Map<string, EnvelopeJob>;
  /** Answered so far in this stage. */
  answered: number;
  blocks: readonly Block[];
  /** By node; absent where it was not simulated. */
  readonly verdicts: Map<number, NodeVerdict>;
  readonly crossings: Map<string, Crossing>;
  /** Touchdowns simulated so far. */
  runs: number;
}

export const DEFAULT_COARSE = 4;

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
    blocks.flatMap((block) => blockCorners(block, size)),
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

/** Once nothing is pending: the next round of this stage, or the next stage that has something to do. */
function moveOn(envelope: Envelope): void {
  if (envelope.stage === 'scan') {
    cutMixedBlocks(envelope);
    if (envelope.pending.size > 0) return;
    envelope.stage = 'fill';
    envelope.answered = 0;
    if (envelope.question.every === true) askNodes(envelope, allNodes(envelope.size));
    if (envelope.pending.size > 0) return;
  }
  if (envelope.stage === 'fill') {
    envelope.stage = 'boundary';
    envelope.answered = 0;
    for (const job of crossedSteps(envelope)) envelope.pending.set(keyOf(job), job);
    if (envelope.pending.size > 0) return;
  }
  envelope.stage = 'done';
  envelope.answered = 0;
}

/** Cuts blocks in which nodes differ, until new nodes have to be looked at or no such block is left. */
function cutMixedBlocks(envelope: Envelope): void {
  const { size, verdicts } = envelope;
  let isCut = true;
  while (isCut && envelope.pending.size === 0) {
    isCut = false;
    const next: Block[] = [];
    for (const block of envelope.blocks) {
      if (isSingle(block) || !isMixed(block, size, verdicts)) {
        next.push(block);
        continue;
      }
      isCut = true;
      const parts = cutBlock(block);
      next.push(...parts);
      askNodes(
        envelope,
        parts.flatMap((part) => blockCorners(part, size)),
      );
    }
    envelope.blocks = next;
  }
}

function isMixed(block: Block, size: GridSize, verdicts: ReadonlyMap<number, NodeVerdict>): boolean {
  let first: EnvelopeClass | undefined;
  for (const node of blockNodes(block, size)) {
    const found = verdicts.get(node)?.class;
    if (found === undefined) continue;
    first ??= found;
    if (found !== first) return true;
  }
  return false;
}

function askNodes(envelope: Envelope, nodes: readonly number[]): void {
  for (const node of nodes) {
    if (envelope.verdicts.has(node)) continue;
    const job: EnvelopeJob = { kind: 'node', node };
    envelope.pending.set(keyOf(job), job);
  }
}

function allNodes({ columns, rows }: GridSize): readonly number[] {
  return Array.from({ length: columns * rows }, (_, node) => node);
}

/** Steps between simulated neighbors of which one is inside. */
function crossedSteps({ size, verdicts }: Envelope): readonly EnvelopeJob[] {
  const jobs: EnvelopeJob[] = [];
  for (const node of allNodes(size)) {
    const neighbors = [(node + 1) % size.columns === 0 ? -1 : node + 1, node + size.columns];
    for (const neighbor of neighbors) {
      const [here, there] = [verdicts.get(node), verdicts.get(neighbor)];
      if (here === undefined || there === undefined) continue;
      if ((here.class === 'inside') === (there.class === 'inside')) continue;
      const isHereInside = here.class === 'inside';
      const { class: limit, direction } = isHereInside ? there : here;
      const [inside, outside] = isHereInside ? [node, neighbor] : [neighbor, node];
      jobs.push({ kind: 'crossing', inside, outside, class: limit, direction });
    }
  }
  return jobs;
}

function keyOf(job: EnvelopeJob | EnvelopeJobAnswer): string {
  return job.kind === 'node' ? `node ${job.node}` : `crossing ${job.inside} ${job.outside}`;
}

/** Lines through the crossings found so far. */
export function envelopeLines(envelope: Envelope): readonly BoundaryLine[] {
  return boundaryLines(envelope.size, [...envelope.crossings.values()]);
}
