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
  /** Of the lander at contact, rising [kg]. */
  readonly masses: readonly number[];
  /**
   * Least horizontal speed at which it tips on ground of the highest plausible friction [m/s]; 0 where it tips even without. By slope, then descent
   * rate, then lean, then mass.
   */
  readonly limits: readonly number[];
}

/** What a contact may be, from the least to the most of each. */
export interface ContactRange {
  readonly slope: Span;
  readonly descentRate: Span;
  readonly lean: Span;
  readonly mass: Span;
}

export type Span = readonly [least: number, most: number];

/** Which part of a range the table does not hold. */
export type BeyondTable = keyof ContactRange;

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
  const masses = entriesAbout(table.masses, range.mass);
  if (masses === undefined) return 'mass';
  let least = Infinity;
  for (let i = slopes[0]; i <= slopes[1]; i++)
    for (let j = rates[0]; j <= rates[1]; j++)
      for (let k = leans[0]; k <= leans[1]; k++)
        for (let l = masses[0]; l <= masses[1]; l++) {
          const row = (i * table.descentRates.length + j) * table.leans.length + k;
          least = Math.min(least, table.limits[row * table.masses.length + l] ?? 0);
        }
  return least;
}

/** A span that leaves the entries by this share of their width is rounding [-]. */
const ROUNDING = 1e-9;

/** Indices of the last entry not above the span and the first not below it; undefined where it leaves the entries. */
function entriesAbout(entries: readonly number[], [least, most]: Span): Span | undefined {
  const slack = ROUNDING * ((entries.at(-1) ?? 0) - (entries[0] ?? 0));
  const first = entries.findLastIndex((entry) => entry <= least + slack);
  const last = entries.findIndex((entry) => entry >= most - slack);
  return first < 0 || last < 0 ? undefined : [first, last];
}
