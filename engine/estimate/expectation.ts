import type { Estimate } from './estimate.ts';
import { STATES } from './state.ts';

/** What one channel of a source should say if what is believed is true. */
export interface Expectation {
  value: number;
  /** Of the report's own error. */
  variance: number;
  /** How the value moves with each state. */
  readonly row: Float64Array;
  /** The state that is to blame when the filter has to give in to this channel. */
  blamed: number;
}

export function createExpectation(): Expectation {
  return { value: 0, variance: 0, row: new Float64Array(STATES), blamed: 0 };
}

/**
 * What a channel of a source should say if the mean that starts at `at` among the remembered ones is true, written into `into`; false, and nothing to go by there, where
 * nothing can be expected. One file a source.
 */
export type Expect = (estimate: Estimate, at: number, into: Expectation, channel: number) => boolean;
