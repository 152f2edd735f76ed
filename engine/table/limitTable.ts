/**
 * Tip limits of one lander on one world, laid out before the descent: the live margin looks its limit up here, so that no frame waits for a
 * simulation, and equal plans show equal numbers. Travel is toward the weakest edge, as in every played arrival.
 */
export interface LimitTable {
  /** Fall of the ground along the travel, rising, + downhill [rad]. */
  readonly slopes: readonly number[];
  /** Rising [m/s]. */
  readonly descentRates: readonly number[];
  /** Toward the travel, rising [rad]. */
  readonly leans: readonly number[];
  /**
   * Least horizontal speed at which it tips [m/s], over the masses and frictions that the table was made for; 0 where it tips even without. By
   * slope, then descent rate, then lean.
   */
  readonly limits: readonly number[];
}

/** What a contact may be, from the least to the most of each. */
export interface ContactRange {
  readonly slope: Span;
  readonly descentRate: Span;
  readonly lean: Span;
}

export type Span = readonly [least: number, most: number];

/** Which part of a range the table does not hold. */
export type BeyondTable = 'slope' | 'descentRate' | 'lean';

/**
 * The least limit of the entries about a range: those in it and those next to it on either side. So between entries it errs to the low side wherever
 * the limit does not dip between two of them.
 */
export function leastLimit(table: LimitTable, range: ContactRange): number | BeyondTable {
  const slopes = entriesAbout(table.slopes, range.slope);
  if (slopes === undefined) return 'slope';
  const rates = entriesAbout(table.descentRates, range.descentRate);
  if (rates === undefined) return 'descentRate';
  const leans = entriesAbout(table.leans, range.lean);
  if (leans === undefined) return 'lean';
  let least = Infinity;
  for (let i = slopes[0]; i <= slopes[1]; i++)
    for (let j = rates[0]; j <= rates[1]; j++)
      for (let k = leans[0]; k <= leans[1]; k++) least = Math.min(least, limitAt(table, i, j, k));
  return least;
}

function limitAt({ descentRates, leans, limits }: LimitTable, slope: number, rate: number, lean: number): number {
  return limits[(slope * descentRates.length + rate) * leans.length + lean] ?? 0;
}

/** Indices of the last entry not above the span and the first not below it; undefined where it leaves the entries. */
function entriesAbout(entries: readonly number[], [least, most]: Span): Span | undefined {
  const first = entries.findLastIndex((entry) => entry <= least);
  const last = entries.findIndex((entry) => entry >= most);
  return first < 0 || last < 0 ? undefined : [first, last];
}
