/** A requirement on a campaign, "met in at least y of all cases, with confidence c", and what the runs say of it. */
import {
  checkShare,
  lowerBound,
  showsAtLeast,
  showsBelow,
  upperBound,
  zeroFailureRuns,
  type Tally,
} from './intervals.ts';

export interface Requirement {
  /** Least share of cases that must succeed [-], between 0 and 1. */
  readonly fraction: number;
  /** Confidence with which that must be shown [-], between 0 and 1. */
  readonly confidence: number;
}

export type Verdict = {
  readonly tally: Tally;
  /** One-sided bounds of the probability of success at the confidence of the requirement [-]. */
  readonly atLeast: number;
  readonly atMost: number;
} & (
  | { readonly kind: 'met' }
  | { readonly kind: 'not met' }
  | {
      readonly kind: 'undecided';
      /** Least further runs that would show it met, if not one of them failed; absent beyond MOST_RUNS. */
      readonly runsIfNoMoreFail?: number;
      /**
       * Further runs after which it would be decided, and how, if they failed at the rate seen so far; absent where that
       * rate is the required one to within what MOST_RUNS runs can tell.
       */
      readonly runsAtPresentRate?: { readonly runs: number; readonly verdict: 'met' | 'not met' };
    }
);

/** No campaign longer than this is ever proposed. */
export const MOST_RUNS = 1_000_000_000;

/**
 * Met when the one-sided Clopper-Pearson lower bound reaches the fraction, not met when the upper bound stays below it,
 * else undecided. Each statement is wrong with at most 1 − confidence. Looking again after more runs spends confidence
 * that this does not account for: fix the number of runs before you look.
 */
export function judge(tally: Tally, requirement: Requirement): Verdict {
  const { fraction, confidence } = requirement;
  checkShare('a required fraction', fraction);
  const atLeast = lowerBound(tally, confidence);
  const atMost = upperBound(tally, confidence);
  // where bound and requirement are equal but for rounding, the figures say so
  if (showsAtLeast(tally, fraction, confidence))
    return { kind: 'met', tally, atLeast: Math.max(atLeast, fraction), atMost };
  if (showsBelow(tally, fraction, confidence)) return { kind: 'not met', tally, atLeast, atMost };
  const bounds = { tally, atLeast, atMost: Math.max(atMost, fraction) };
  const needed = runsWithFailures(tally.runs - tally.successes, requirement);
  const more = runsAtRate(tally, requirement);
  return {
    kind: 'undecided',
    ...bounds,
    ...(needed !== undefined && { runsIfNoMoreFail: needed - tally.runs }),
    ...(more && { runsAtPresentRate: more }),
  };
}

/** Fewest runs for which the requirement is met with this many failures among them; undefined beyond MOST_RUNS. */
export function runsWithFailures(failures: number, { fraction, confidence }: Requirement): number | undefined {
  if (failures > 0)
    return fewest(failures, (runs) => showsAtLeast({ successes: runs - failures, runs }, fraction, confidence));
  const runs = zeroFailureRuns(fraction, confidence);
  return runs <= MOST_RUNS ? runs : undefined;
}

function runsAtRate(
  tally: Tally,
  requirement: Requirement,
): { readonly runs: number; readonly verdict: 'met' | 'not met' } | undefined {
  const { fraction, confidence } = requirement;
  const rate = tally.successes / tally.runs;
  if (rate === fraction) return undefined;
  const verdict = rate > fraction ? 'met' : 'not met';
  const shows = (runs: number): boolean => {
    // rounded against the verdict, so that the number is not too small
    const scaled = (runs * tally.successes) / tally.runs;
    return verdict === 'met'
      ? showsAtLeast({ successes: Math.floor(scaled), runs }, fraction, confidence)
      : showsBelow({ successes: Math.ceil(scaled), runs }, fraction, confidence);
  };
  const total = fewest(tally.runs, shows);
  return total === undefined ? undefined : { runs: total - tally.runs, verdict };
}

/** A number of runs above `floor` from which `shows` holds, by doubling and halving; undefined beyond MOST_RUNS. */
function fewest(floor: number, shows: (runs: number) => boolean): number | undefined {
  let fails = floor;
  let holds = Math.max(1, floor) * 2;
  while (!shows(holds)) {
    if (holds >= MOST_RUNS) return undefined;
    fails = holds;
    holds = Math.min(MOST_RUNS, holds * 2);
  }
  while (holds - fails > 1) {
    const middle = Math.floor((fails + holds) / 2);
    if (shows(middle)) holds = middle;
    else fails = middle;
  }
  return holds;
}
