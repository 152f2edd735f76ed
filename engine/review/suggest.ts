import type { CardOutcome, Scorecard } from '../table/scorecardTypes.ts';
import type { Drill } from '../drill/index.ts';
import type { InjectMeasures } from './measures.ts';
import type { Rating } from './review.ts';

/** What speaks for a rating. The evaluator decides; nothing of this is ever saved by itself. */
export interface Suggestion {
  readonly objective: string;
  readonly rating: Rating;
  readonly reasons: readonly SuggestionReason[];
}

/**
 * lost: not upright, or never decided. aborted: the landing was given up, which can be right. outsideLimit: upright outside its limit, by luck. missed, late: a response that the
 * table can tell was not carried out, or after its time. prompted: a contingency had to help. thinMargin: upright with U over 0.85. allSeen: nothing speaks against it.
 */
export const SUGGESTION_REASONS = [
  'lost',
  'aborted',
  'outsideLimit',
  'missed',
  'late',
  'prompted',
  'thinMargin',
  'allSeen',
] as const;
type SuggestionReason = (typeof SUGGESTION_REASONS)[number];

const LOST: readonly CardOutcome[] = [
  'tipped downhill',
  'tipped uphill',
  'gear overload',
  'off site',
  'propellant exhausted',
  'stopped',
];

/** U over this is more than adequate [-]: product terms, `marginBand.ts`. */
const ADEQUATE = 0.85;

/** One for each objective, by the guide common to all drills: P all seen, S late or prompted, M upright by luck, U lost. */
export function suggestRatings(
  drill: Drill,
  measures: readonly InjectMeasures[],
  scorecard: Scorecard,
  sent: readonly string[],
): readonly Suggestion[] {
  return drill.objectives.map(({ id: objective }) => {
    const rows = drill.events.filter((row) => row.objective === objective);
    const responses = rows.flatMap(({ id }) => measures.find(({ inject }) => inject === id)?.responses ?? []);
    const seen = responses.filter(({ isSeen }) => isSeen);
    const isLost = LOST.includes(scorecard.outcome);
    const worst = scorecard.worst === undefined ? undefined : scorecard.contacts[scorecard.worst]?.utilisation;
    const reasons: SuggestionReason[] = [
      ...(isLost ? (['lost'] as const) : []),
      ...(scorecard.outcome === 'aborted' ? (['aborted'] as const) : []),
      ...(scorecard.outcome === 'upright outside limit' ? (['outsideLimit'] as const) : []),
      ...(seen.some(({ seconds }) => seconds === undefined) ? (['missed'] as const) : []),
      ...(seen.some(({ seconds, within }) => seconds !== undefined && seconds > within) ? (['late'] as const) : []),
      ...(rows.some(({ id, kind }) => kind === 'contingency' && sent.includes(id)) ? (['prompted'] as const) : []),
      ...(worst !== undefined && worst > ADEQUATE && worst <= 1 ? (['thinMargin'] as const) : []),
    ];
    return { objective, rating: ratingFor(reasons), reasons: reasons.length === 0 ? ['allSeen'] : reasons };
  });
}

function ratingFor(reasons: readonly SuggestionReason[]): Rating {
  if (reasons.includes('lost')) return 'U';
  if (reasons.includes('outsideLimit')) return 'M';
  if (reasons.includes('missed')) return 'U';
  return reasons.some((reason) => reason !== 'aborted') ? 'S' : 'P';
}
