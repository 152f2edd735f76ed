import type { Tolerance } from './tolerances.ts';

/**
 * measured: what somebody measured. printed: a figure that stands in its source as it stands here. form: a closed form named after
 * its source and evaluated at inputs of our own, which verifies and does not validate. derived: textbook physics worked out
 * beside the check. trend: a direction or rule of thumb, no more.
 */
export const CHECK_KINDS = ['measured', 'printed', 'form', 'derived', 'trend'] as const;
export type CheckKind = (typeof CHECK_KINDS)[number];

/** yes: at hand, or derived beside the code. abstract: only its abstract was. no: from memory, or there is no source. */
type Sight = 'yes' | 'abstract' | 'no';

/** equals: within the tolerance. atMost, atLeast: on that side of the expected value, which is then a bound. within: between two. */
export type CheckRelation = 'equals' | 'atMost' | 'atLeast' | 'within';

/** One value from outside the engine, and how the shipped engine computes the same thing. */
export interface OutsideCheck {
  readonly name: string;
  /** Who says so; for a derived value, the law it follows from. */
  readonly source: string;
  readonly kind: CheckKind;
  readonly seen: Sight;
  /** As it stands in the source, digit by digit: the last place printed is what the value is good for. A range is '2 to 6'. */
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
  readonly seen: Sight;
  readonly unit: string;
  readonly relation: CheckRelation;
  /** Of a range, the lower end. */
  readonly expected: number;
  /** Upper end of a range. */
  readonly upTo?: number;
  /** The expected value with the digits of its source. */
  readonly printed: string;
  readonly computed: number;
  /** |computed - expected| / |expected|; of a range, from its nearer end, 0 inside [-]. */
  readonly relativeError: number;
  /** Largest relative error that passes; 0 for a bound [-]. */
  readonly tolerance: number;
  readonly toleranceReason: string;
  readonly pass: boolean;
  readonly note?: string;
}

/** What the engine makes of one check. Anything not finite fails. */
export function runCheck(check: OutsideCheck, gravityOf: GravityOf): CheckResult {
  const [expected = Number.NaN, upTo] = check.expected.split(' to ').map(Number);
  const computed = check.compute(gravityOf);
  const tolerance = check.tolerance.relativeTo(check.expected);
  return {
    name: check.name,
    source: check.source,
    kind: check.kind,
    seen: check.seen,
    unit: check.unit,
    relation: check.relation,
    expected,
    ...(upTo === undefined ? {} : { upTo }),
    printed: check.expected,
    computed,
    relativeError: relativeError(computed, expected, upTo),
    tolerance,
    toleranceReason: check.tolerance.reason,
    pass: holds(check.relation, { expected, upTo: upTo ?? expected, computed, tolerance }),
    ...(check.note === undefined ? {} : { note: check.note }),
  };
}

function relativeError(computed: number, expected: number, upTo: number | undefined): number {
  if (upTo === undefined || computed < expected) return Math.abs(computed - expected) / Math.abs(expected);
  return computed > upTo ? (computed - upTo) / Math.abs(upTo) : Number.isNaN(computed) ? computed : 0;
}

interface Compared {
  readonly expected: number;
  readonly upTo: number;
  readonly computed: number;
  readonly tolerance: number;
}

function holds(relation: CheckRelation, { expected, upTo, computed, tolerance }: Compared): boolean {
  const verdicts: Readonly<Record<CheckRelation, boolean>> = {
    equals: Math.abs(computed - expected) <= tolerance * Math.abs(expected),
    atMost: computed <= expected,
    atLeast: computed >= expected,
    within: computed >= expected && computed <= upTo,
  };
  return Number.isFinite(computed) && Number.isFinite(expected) && verdicts[relation];
}
