/** Where the boundary of the region inside crosses the steps of the grid, found by halving; and the lines through there. */
import type { EnvelopeClass, EnvelopeQuestion } from './envelopeQuestion.ts';
import { nodeSpeeds } from './envelopeQuestion.ts';
import { anyLimit, type SimulateEnvelope } from './worstDirection.ts';

/** A step of the grid between neighboring nodes, of which one is inside and one is not. */
export interface CrossedStep {
  readonly inside: number;
  readonly outside: number;
}

export interface Crossing extends CrossedStep {
  /** Last point found inside [m/s], and a limit that is hit just outside. */
  readonly horizontalSpeed: number;
  readonly descentRate: number;
  readonly class: EnvelopeClass;
  /** Index of the direction that hits it. */
  readonly direction: number;
  readonly runs: number;
}

/**
 * Halves a crossed step. What is returned is inside, so the boundary is never overstated by it; the true one lies at most
 * step / 2^halvings farther. If the boundary crosses the step more than once, one of the crossings is found.
 */
export function locateCrossing(
  question: EnvelopeQuestion,
  step: CrossedStep & { readonly class: EnvelopeClass; readonly direction: number },
  simulate: SimulateEnvelope,
): Crossing {
  let inside = nodeSpeeds(question, step.inside);
  let outside = nodeSpeeds(question, step.outside);
  let found = { class: step.class, direction: step.direction };
  let runs = 0;
  for (let i = 0; i < (question.halvings ?? DEFAULT_HALVINGS); i++) {
    const middle = {
      horizontalSpeed: (inside.horizontalSpeed + outside.horizontalSpeed) / 2,
      descentRate: (inside.descentRate + outside.descentRate) / 2,
    };
    const verdict = anyLimit(question, middle, simulate, found.direction);
    runs += verdict.runs;
    if (verdict.class === 'inside') inside = middle;
    else {
      outside = middle;
      found = { class: verdict.class, direction: verdict.direction };
    }
  }
  return { inside: step.inside, outside: step.outside, ...inside, ...found, runs };
}

const DEFAULT_HALVINGS = 4;

/** A piece of the boundary between two crossings [m/s]. */
export type BoundaryLine = readonly [Crossing, Crossing];

/**
 * Lines through the crossings, square by square of the grid (marching squares). Where a square has its inside corners at
 * opposite ends, they are taken as separate: the region outside is what stays connected. Nothing is smoothed.
 */
export function boundaryLines(
  size: { readonly columns: number; readonly rows: number },
  crossings: readonly Crossing[],
): readonly BoundaryLine[] {
  const byStep = new Map(crossings.map((crossing) => [stepKey(crossing.inside, crossing.outside), crossing]));
  const lines: BoundaryLine[] = [];
  for (let row = 0; row + 1 < size.rows; row++) {
    for (let column = 0; column + 1 < size.columns; column++) {
      const corner = row * size.columns + column;
      const [a, b, c, d] = [corner, corner + 1, corner + 1 + size.columns, corner + size.columns];
      const [low, right, high, left] = [
        byStep.get(stepKey(a, b)),
        byStep.get(stepKey(b, c)),
        byStep.get(stepKey(c, d)),
        byStep.get(stepKey(d, a)),
      ];
      const found = [low, right, high, left].filter((crossing) => crossing !== undefined);
      if (found.length === 2) lines.push([found[0]!, found[1]!]);
      else if (low !== undefined && right !== undefined && high !== undefined && left !== undefined) {
        const isFirstInside = low.inside === a;
        // around each inside corner
        lines.push(
          ...(isFirstInside
            ? ([
                [low, left],
                [high, right],
              ] as const)
            : ([
                [low, right],
                [high, left],
              ] as const)),
        );
      }
    }
  }
  return lines;
}

function stepKey(a: number, b: number): string {
  return `${Math.min(a, b)} ${Math.max(a, b)}`;
}
