/** An envelope as it stands, for drawing and tables: every node with its class, how it is known, and the limit row by row. */
import type { BoundaryLine } from './boundary.ts';
import { envelopeLines } from './envelope.ts';
import type { Envelope } from './rounds.ts';
import { axisValue, ENVELOPE_CLASSES, type EnvelopeClass } from './envelopeQuestion.ts';
import { blockNodes } from './refinement.ts';

type NodeKnowledge = 'unknown' | 'inferred' | 'simulated';

interface EnvelopeNode {
  /** [m/s] */
  readonly horizontalSpeed: number;
  readonly descentRate: number;
  readonly knowledge: NodeKnowledge;
  /** undefined where unknown. */
  readonly class: EnvelopeClass | undefined;
  /** Worst direction's index and the least margin [m]; only where simulated. */
  readonly direction?: number;
  readonly leastMargin?: number;
}

export interface EnvelopeMap {
  /** Row by row from the lowest descent rate, each from the lowest horizontal speed. */
  readonly nodes: readonly EnvelopeNode[];
  readonly columns: number;
  readonly rows: number;
  readonly lines: readonly BoundaryLine[];
  /** Nodes of each class, inferred ones included; and not known yet. */
  readonly counts: { readonly [Class in EnvelopeClass]: number };
  readonly unknown: number;
  readonly simulated: number;
  readonly runs: number;
  readonly isDone: boolean;
}

export function mapEnvelope(envelope: Envelope): EnvelopeMap {
  const { size, question, verdicts } = envelope;
  const inferred = inferredClasses(envelope);
  const nodes = Array.from({ length: size.columns * size.rows }, (_, node): EnvelopeNode => {
    const column = node % size.columns;
    const horizontalSpeed = axisValue(question.horizontalSpeed, column);
    const descentRate = axisValue(question.descentRate, (node - column) / size.columns);
    const verdict = verdicts.get(node);
    if (verdict !== undefined) {
      const { class: name, direction, leastMargin } = verdict;
      return { horizontalSpeed, descentRate, knowledge: 'simulated', class: name, direction, leastMargin };
    }
    const name = inferred.get(node);
    return { horizontalSpeed, descentRate, knowledge: name === undefined ? 'unknown' : 'inferred', class: name };
  });
  const count = (name: EnvelopeClass | undefined): number => nodes.filter((node) => node.class === name).length;
  const counts = Object.fromEntries(ENVELOPE_CLASSES.map((name) => [name, count(name)]));
  return {
    nodes,
    ...size,
    lines: envelopeLines(envelope),
    counts: { ...NO_COUNTS, ...counts },
    unknown: count(undefined),
    simulated: verdicts.size,
    runs: envelope.runs,
    isDone: envelope.stage === 'done',
  };
}

const NO_COUNTS = {
  inside: 0,
  clearance: 0,
  load: 0,
  'crush exhausted': 0,
  'timed out': 0,
  'tip uphill': 0,
  'tip downhill': 0,
} as const satisfies { readonly [Class in EnvelopeClass]: number };

/** What holds along one row, from the node nearest to no horizontal speed outwards. */
export interface RowLimit {
  /** [m/s] */
  readonly descentRate: number;
  /** Whether that node is inside; where it is not, there is no limit to give. */
  readonly startsInside: boolean;
  /** Last speed found inside on the way up and on the way down the axis, and what ends it; absent where the axis ends first. */
  readonly above?: RowEnd;
  readonly below?: RowEnd;
  /** Whether there is an inside again beyond one of these: a strip or an island. */
  readonly comesBack: boolean;
}

export interface RowEnd {
  /** [m/s] */
  readonly horizontalSpeed: number;
  readonly class: EnvelopeClass;
}

/** Limits of each row, lowest descent rate first. Of an envelope that is done. */
export function rowLimits(envelope: Envelope): readonly RowLimit[] {
  const { nodes, columns, rows } = mapEnvelope(envelope);
  const ends = new Map([...envelope.crossings.values()].map((found) => [`${found.inside} ${found.outside}`, found]));
  return Array.from({ length: rows }, (_, row): RowLimit => {
    const line = nodes.slice(row * columns, (row + 1) * columns);
    const start = nearestToZero(line.map(({ horizontalSpeed }) => horizontalSpeed));
    const walk = (by: 1 | -1): { readonly end?: RowEnd; readonly comesBack: boolean } => {
      let column = start;
      while (line[column + by]?.class === 'inside') column += by;
      if (line[column + by] === undefined) return { comesBack: false };
      const found = ends.get(`${row * columns + column} ${row * columns + column + by}`);
      const beyond = by === 1 ? line.slice(column + 1) : line.slice(0, column);
      const comesBack = beyond.some((node) => node.class === 'inside');
      return found === undefined
        ? { comesBack }
        : { end: { horizontalSpeed: found.horizontalSpeed, class: found.class }, comesBack };
    };
    const descentRate = line[0]?.descentRate ?? NaN;
    if (line[start]?.class !== 'inside')
      return { descentRate, startsInside: false, comesBack: line.some((node) => node.class === 'inside') };
    const [above, below] = [walk(1), walk(-1)];
    return {
      descentRate,
      startsInside: true,
      ...(above.end && { above: above.end }),
      ...(below.end && { below: below.end }),
      comesBack: above.comesBack || below.comesBack,
    };
  });
}

/** Classes of nodes in blocks that agree. */
function inferredClasses({ blocks, size, verdicts }: Envelope): ReadonlyMap<number, EnvelopeClass> {
  const inferred = new Map<number, EnvelopeClass>();
  for (const block of blocks) {
    const nodes = blockNodes(block, size);
    const known = nodes.flatMap((node) => verdicts.get(node)?.class ?? []);
    const [first] = known;
    // a block some of whose corners are still to be simulated says nothing yet
    if (first === undefined || known.length < 4 || known.some((name) => name !== first)) continue;
    for (const node of nodes) inferred.set(node, first);
  }
  return inferred;
}

function nearestToZero(values: readonly number[]): number {
  let nearest = 0;
  for (const [i, value] of values.entries()) if (Math.abs(value) < Math.abs(values[nearest] ?? Infinity)) nearest = i;
  return nearest;
}
