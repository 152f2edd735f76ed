/** The class of one pair of speeds: the worst over all directions. */
import type { TouchdownCase, TouchdownResult } from '../touchdown/touchdownCase.ts';
import { ENVELOPE_CLASSES, type EnvelopeClass, type EnvelopeQuestion } from './envelopeQuestion.ts';

/** The part of a touchdown's result that an envelope reads. */
type EnvelopeAnswer = Pick<TouchdownResult, 'outcome' | 'limitsHit' | 'leastMargin'>;
export type SimulateEnvelope = (touchdown: TouchdownCase) => EnvelopeAnswer;

export interface NodeVerdict {
  readonly class: EnvelopeClass;
  /** Index of the direction that is worst: of those of that class, the first in the order of looking. */
  readonly direction: number;
  /** Least margin over the directions simulated [m]; of all of them only where none tips. */
  readonly leastMargin: number;
  /** Touchdowns simulated. */
  readonly runs: number;
}

/**
 * Looks at the directions in an order that spreads them out, always the same, and stops at the first that tips, since nothing
 * is worse: the verdict does not depend on which nodes were looked at before.
 */
export function worstDirection(question: EnvelopeQuestion, speeds: Speeds, simulate: SimulateEnvelope): NodeVerdict {
  return lookAround(question, speeds, simulate, {
    order: spreadOrder(question.directions.length),
    isEnough: (rank) => rank >= FIRST_TIP,
  });
}

/**
 * Whether a pair of speeds is inside, and if not, one direction that ends it: stops at the first that hits any limit, looking
 * at the likeliest first. Quicker than the worst, and enough to find a boundary.
 */
export function anyLimit(
  question: EnvelopeQuestion,
  speeds: Speeds,
  simulate: SimulateEnvelope,
  likeliest: number,
): NodeVerdict {
  const others = spreadOrder(question.directions.length).filter((index) => index !== likeliest);
  return lookAround(question, speeds, simulate, { order: [likeliest, ...others], isEnough: (rank) => rank > 0 });
}

interface Speeds {
  readonly horizontalSpeed: number;
  readonly descentRate: number;
}

const FIRST_TIP = ENVELOPE_CLASSES.indexOf('tip uphill');

function lookAround(
  question: EnvelopeQuestion,
  speeds: Speeds,
  simulate: SimulateEnvelope,
  { order, isEnough }: { readonly order: readonly number[]; readonly isEnough: (rank: number) => boolean },
): NodeVerdict {
  let worst = -1;
  let direction = 0;
  let leastMargin = Infinity;
  let runs = 0;
  for (const index of order) {
    const answer = simulate(touchdownToward(question, speeds, index));
    runs++;
    leastMargin = Math.min(leastMargin, answer.leastMargin.value);
    const rank = ENVELOPE_CLASSES.indexOf(classOf(answer));
    if (rank > worst) {
      worst = rank;
      direction = index;
    }
    if (isEnough(rank)) break;
  }
  return { class: ENVELOPE_CLASSES[worst] ?? 'inside', direction, leastMargin, runs };
}

/** The touchdown of a pair of speeds toward a direction; also for looking at one of them closely. */
export function touchdownToward(
  { lander, conditions, directions }: EnvelopeQuestion,
  speeds: Speeds,
  direction: number,
): TouchdownCase {
  return { lander, ...conditions, state: { ...conditions.state, ...speeds, ...directions[direction] } };
}

/** The worst limit that was hit, in the rank of ENVELOPE_CLASSES. */
export function classOf({ outcome, limitsHit }: EnvelopeAnswer): EnvelopeClass {
  let rank = outcome === 'timed out' ? ENVELOPE_CLASSES.indexOf('timed out') : 0;
  for (const limit of limitsHit) rank = Math.max(rank, ENVELOPE_CLASSES.indexOf(limit));
  return ENVELOPE_CLASSES[rank] ?? 'inside';
}

/** 0 … count − 1 so that every first few are spread over all: numbers in the order of their reversed binary digits. */
export function spreadOrder(count: number): readonly number[] {
  let size = 1;
  while (size < count) size *= 2;
  const numbers = Array.from({ length: size }, (_, place) => reverseBits(place, size));
  return numbers.filter((value) => value < count);
}

function reverseBits(value: number, size: number): number {
  let reversed = 0;
  let left = value;
  for (let bit = 1; bit < size; bit *= 2) {
    reversed = 2 * reversed + (left % 2);
    left = Math.floor(left / 2);
  }
  return reversed;
}
