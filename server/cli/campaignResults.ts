import type { CampaignSummary, FactorShares, Verdict } from '../../engine/dispersion/index.ts';
import { stackResults, type CampaignStacks } from './campaignStacks.ts';
import { describeLeg } from './campaignRows.ts';
import type { Report } from './report.ts';

/** A campaign for machines. */
export function campaignResults(
  summary: CampaignSummary,
  shares: readonly FactorShares[] | undefined,
  stack: CampaignStacks | undefined,
): Report['results'] {
  const { asked, done, independent, outcomes, requirement, measures, drivers, worst, unsettled } = summary;
  return {
    runs: { asked, done },
    independent,
    outcomes: Object.fromEntries(
      outcomes.map(({ outcome, count, fraction, wilson95, clopperPearson95 }) => [
        outcome,
        { count, fraction, wilson95, clopperPearson95 },
      ]),
    ),
    requirement: requirement === undefined ? null : { ...requirement, ...verdictOf(requirement.verdict) },
    measures: measures.map((measure) => ({
      ...measure,
      worstKnown: finite(measure.worstKnown),
      least: finite(measure.least),
      greatest: finite(measure.greatest),
      quantiles: measure.quantiles.map(({ share, value }) => ({
        share,
        value: finite(value),
        isCutOff: value === undefined,
      })),
      bound:
        measure.bound === undefined
          ? null
          : {
              ...measure.bound,
              value: finite(measure.bound.value),
              isCutOff: measure.bound.value === undefined,
            },
    })),
    drivers,
    shares: shares ?? null,
    stackUp: stack === undefined ? null : stackResults(stack),
    unsettled,
    worst: worst.map(({ index, outcome, leastMargin, isCutOff, values, gear }) => ({
      index,
      outcome,
      leastMargin,
      isCutOff,
      inputs: values,
      gear: gear.map(describeLeg),
    })),
  };
}

function verdictOf(verdict: Verdict): Readonly<Record<string, unknown>> {
  const { kind, tally, atLeast, atMost } = verdict;
  const needed = verdict.kind === 'undecided' ? verdict : undefined;
  return {
    verdict: kind,
    successes: tally.successes,
    runs: tally.runs,
    atLeast,
    atMost,
    runsIfNoMoreFail: needed?.runsIfNoMoreFail ?? null,
    runsAtPresentRate: needed?.runsAtPresentRate ?? null,
  };
}

/** A lander without hull points has no clearance, and what is cut off no value. */
function finite(value: number | undefined): number | null {
  return value !== undefined && Number.isFinite(value) ? value : null;
}
