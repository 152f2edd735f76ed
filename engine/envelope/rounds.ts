/** What is known of an envelope, and what is to be simulated next: rounds of jobs, each following from the answers to the last. */
import type { Crossing, CrossedStep } from './boundary.ts';
import type { EnvelopeClass, EnvelopeQuestion } from './envelopeQuestion.ts';
import { blockCorners, blockNodes, cutBlock, isSingle, type Block, type GridSize } from './refinement.ts';
import type { NodeVerdict } from './worstDirection.ts';

/** scan: nodes of the grid. fill: the nodes left, where every one is asked for. boundary: crossings. */
export type EnvelopeStage = 'scan' | 'fill' | 'boundary' | 'done';

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

/** Once nothing is pending: the next round of this stage, or the next stage that has something to do. */
export function moveOn(envelope: Envelope): void {
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

/** Puts nodes that were not simulated yet among the pending jobs. */
export function askNodes(envelope: Envelope, nodes: readonly number[]): void {
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

/** A name for a job and its answer. */
export function keyOf(job: EnvelopeJob | EnvelopeJobAnswer): string {
  return job.kind === 'node' ? `node ${job.node}` : `crossing ${job.inside} ${job.outside}`;
}
