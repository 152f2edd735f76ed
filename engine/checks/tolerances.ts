/** How far a computed value may lie from the expected one, and why just that far. */
export interface Tolerance {
  readonly reason: string;
  /** Largest passing relative error for a value printed like this [-]. */
  readonly relativeTo: (printed: string) => number;
}

/**
 * Every tolerance of the outside checks stands in this table. They say how well the *expected* value is known, not how
 * well the engine does: a check that fails is looked into, its tolerance is not widened.
 */
const TOLERANCES = {
  /** Closed forms: both sides are exact, so only the rounding of the printed value separates them. */
  printed: {
    reason: 'half a unit in the last printed place',
    relativeTo: (printed) => halfLastPlace(printed) / Math.abs(Number(printed)),
  },
  /** Counts. */
  exact: {
    reason: 'none: a whole number',
    relativeTo: () => 0,
  },
  /** Bounds and rules of thumb: the computed value lies on the stated side or it does not. */
  bound: {
    reason: 'none: the expected value is a bound',
    relativeTo: () => 0,
  },
} as const satisfies Readonly<Record<string, Tolerance>>;

/** How a row compares: with a printed value, with a count, with a range, or a bound on one side. */
export const EQUALS_PRINTED = { relation: 'equals', tolerance: TOLERANCES.printed } as const;
export const EQUALS_COUNT = { relation: 'equals', tolerance: TOLERANCES.exact } as const;
export const AT_MOST = { relation: 'atMost', tolerance: TOLERANCES.bound } as const;
export const WITHIN = { relation: 'within', tolerance: TOLERANCES.bound } as const;
export const AT_LEAST = { relation: 'atLeast', tolerance: TOLERANCES.bound } as const;

/** Half of one unit in the last place of a plain decimal such as '1.7740'. */
function halfLastPlace(printed: string): number {
  const decimals = printed.split('.')[1]?.length ?? 0;
  let unit = 1;
  for (let place = 0; place < decimals; place++) unit /= 10;
  return unit / 2;
}
