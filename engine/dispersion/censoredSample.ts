/** A sample of which some values are known only to be worse than all others. */

interface CensoredSample {
  /** Those that are known, ascending. */
  readonly known: Float64Array;
  /** How many are cut off. */
  readonly cutOff: number;
  /** Which end of the sample they stand at. */
  readonly adverse: 'low' | 'high';
}

/**
 * Value of a rank, ascending from 1, with all that are cut off at the adverse end; undefined where the rank falls among them.
 * So a distribution-free bound stays one: no value of a rank is better than the true one.
 */
export function valueOfRank({ known, cutOff, adverse }: CensoredSample, rank: number): number | undefined {
  return known[rank - 1 - (adverse === 'low' ? cutOff : 0)];
}

/** The worst value that is known; whatever is cut off ranks beyond it. Undefined when none is known. */
export function worstKnown({ known, adverse }: CensoredSample): number | undefined {
  return adverse === 'low' ? known[0] : known[known.length - 1];
}
