import type { Tolerance } from './tolerances.ts';

/**
 * measurement: a measured value or flight datum. published: a closed form or table in print. derived: textbook physics
 * worked out beside the check. trend: a direction or rule of thumb, no more.
 */
export const CHECK_KINDS = ['measurement', 'published', 'derived', 'trend'] as const;
export type CheckKind = (typeof CHECK_KINDS)[number];

/** equals: within the tolerance. atMost, atLeast: on that side of the expected value, which is then a bound. */
export type CheckRelation = 'equals' | 'atMost' | 'atLeast';

/** One value from outside the engine, and how the shipped engine computes the same thing. */
export interface OutsideCheck {
  readonly name: string;
  /** Who says so; for a derived value, the law it follows from. */
  readonly source: string;
  readonly kind: CheckKind;
  /** Whether the source was at hand; a derivation beside the code counts. False: from memory, or there is no source. */
  readonly seen: boolean;
  /** As it stands in the source, digit by digit: the last place printed is what the value is good for. */
  readonly expected: string;
  /** Of expected and computed; '-' for a ratio. */
  readonly unit: string;
  readonly relation: CheckRelation;
  readonly tolerance: Tolerance;
  readonly note?: string;
  /** Runs the shipped engine. Any gravity it uses comes from the table of worlds handed in. */
  readonly compute: (gravityOf: GravityOf) => number;
}

/** Surface gravity of a world by its identifier [m/s²]. */
export type GravityOf = (worldId: string) => number;

export interface CheckResult {
  readonly name: string;
  readonly source: string;
  readonly kind: CheckKind;
  readonly seen: boolean;
  readonly unit: string;
  readonly relation: CheckRelation;
  readonly expected: number;
  /** The expected value with the digits of its source. */
  readonly printed: string;
  readonly computed: number;
  /** |computed - expected| / |expected| [-]. */
  readonly relativeError: number;
  /** Largest relative error that passes; 0 for a bound [-]. */
  readonly tolerance: number;
  readonly toleranceReason: string;
  readonly pass: boolean;
  readonly note?: string;
}

/** What the engine makes of one check. Anything not finite fails. */
export function runCheck(check: OutsideCheck, gravityOf: GravityOf): CheckResult {
  const expected = Number(check.expected);
  const computed = check.compute(gravityOf);
  const relativeError = Math.abs(computed - expected) / Math.abs(expected);
  const tolerance = check.tolerance.relativeTo(check.expected);
  return {
    name: check.name,
    source: check.source,
    kind: check.kind,
    seen: check.seen,
    unit: check.unit,
    relation: check.relation,
    expected,
    printed: check.expected,
    computed,
    relativeError,
    tolerance,
    toleranceReason: check.tolerance.reason,
    pass: holds(check.relation, { expected, computed, tolerance }),
    ...(check.note === undefined ? {} : { note: check.note }),
  };
}

function holds(
  relation: CheckRelation,
  values: { readonly expected: number; readonly computed: number; readonly tolerance: number },
): boolean {
  const { expected, computed, tolerance } = values;
  const verdicts: Readonly<Record<CheckRelation, boolean>> = {
    equals: Math.abs(computed - expected) <= tolerance * Math.abs(expected),
    atMost: computed <= expected,
    atLeast: computed >= expected,
  };
  return Number.isFinite(computed) && Number.isFinite(expected) && verdicts[relation];
}
