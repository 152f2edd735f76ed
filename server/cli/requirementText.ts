import type { CampaignSummary, Verdict } from '../../engine/dispersion/index.ts';
import { figure } from './textTable.ts';

/** What was required, what the runs say of it, and how many more would decide it. */
export function requirementText(
  { fraction, confidence, outcomes, verdict }: NonNullable<CampaignSummary['requirement']>,
  isPartial = false,
): string {
  const { kind, tally, atLeast, atMost } = verdict;
  const wanted = `Required: ${outcomes.join(' or ')} in at least ${fraction} of all cases, with confidence ${confidence}`;
  const seen =
    `${tally.successes} of ${tally.runs}: with confidence ${confidence} at least ${figure(atLeast, 5)}, ` +
    `and at most ${figure(atMost, 5)} (exact, one-sided).`;
  return [
    `${wanted}: ${kind}.`,
    kind === 'undecided' ? `${seen} ${runsNeeded(verdict)}` : seen,
    // stopping when the figures look good spends confidence
    ...(isPartial ? ['Stopped early: a verdict counts only for a number of runs fixed beforehand.'] : []),
  ].join('\n');
}

/** If none fails from here on, and at the rate seen so far; said once where both are the same. */
function runsNeeded({ runsIfNoMoreFail, runsAtPresentRate }: Extract<Verdict, { readonly kind: 'undecided' }>): string {
  const met = `${runsIfNoMoreFail} more runs without a failure would show it met`;
  if (runsAtPresentRate === undefined) return `${met}; at the rate so far it would stay undecided.`;
  const { runs, verdict } = runsAtPresentRate;
  if (verdict === 'met' && runs === runsIfNoMoreFail) return `${met}.`;
  return `${met}; at the rate so far ${runs} more would show it ${verdict}.`;
}
