import { lowerFigureBeside, upperFigureBeside } from '../../engine/figures.ts';
import type { CampaignSummary, Verdict } from '../../engine/dispersion/index.ts';

/** What was required, what the runs say of it, how many more would decide it, and what limits the verdict. */
export function requirementText(
  { fraction, confidence, outcomes, verdict, assumptionHolds }: NonNullable<CampaignSummary['requirement']>,
  isPartial = false,
): string {
  const { kind, tally, atLeast, atMost } = verdict;
  const wanted = `Required: ${outcomes.join(' or ')} in at least ${fraction} of all cases, with confidence ${confidence}`;
  const seen =
    `${tally.successes} of ${tally.runs}: with confidence ${confidence} at least ${lowerFigureBeside(fraction, atLeast)}, ` +
    `and at most ${upperFigureBeside(fraction, atMost)} (exact, one-sided).`;
  return [
    `${wanted}: ${kind}.`,
    kind === 'undecided' ? `${seen} ${runsNeeded(verdict)}` : seen,
    ...(assumptionHolds ? [] : [DEPENDENT_DRAWS]),
    // stopping when the figures look good spends confidence
    ...(isPartial ? ['Stopped early: a verdict counts only for a number of runs fixed beforehand.'] : []),
  ].join('\n');
}

/** What a verdict on evenly spread draws is worth. */
const DEPENDENT_DRAWS =
  "These bounds assume independent draws, which Sobol' and Latin hypercube draws are not: the stated confidence is not proved for this verdict.";

/** If none fails from here on, and at the rate seen so far; said once where both are the same. */
function runsNeeded({ runsIfNoMoreFail, runsAtPresentRate }: Extract<Verdict, { readonly kind: 'undecided' }>): string {
  if (runsIfNoMoreFail === undefined) return 'No campaign of a billion runs would show it met.';
  const met = `${runsIfNoMoreFail} more ${runsIfNoMoreFail === 1 ? 'run' : 'runs'} without a failure would show it met`;
  if (runsAtPresentRate === undefined) return `${met}; at the rate so far it would stay undecided.`;
  const { runs, verdict } = runsAtPresentRate;
  if (verdict === 'met' && runs === runsIfNoMoreFail) return `${met}.`;
  return `${met}; at the rate so far ${runs} more would show it ${verdict}.`;
}
