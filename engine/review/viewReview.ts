import type { WhatIf } from '../table/fork.ts';
import { createMemo } from '../table/memo.ts';
import type { Scorecard } from '../table/scorecardTypes.ts';
import { scorecardOf, type Table } from '../table/table.ts';
import { isControl, type Member } from '../table/tableState.ts';
import type { Seat } from '../table/tableTypes.ts';
import { TICK_RATE } from '../world/constants.ts';
import { lookBack, type LookedBack } from './lookBack.ts';
import type { InjectMeasures } from './measures.ts';
import type { ReviewMoment } from './moments.ts';
import {
  TOPICS,
  type Action,
  type DebriefStep,
  type Load,
  type Observation,
  type Rated,
  type Topic,
} from './review.ts';
import { suggestRatings, type Suggestion } from './suggest.ts';

/** What one member is shown of what was noted and made of it: the control side during the descent, everybody once it is at rest. */
export interface ReviewView {
  readonly step: DebriefStep;
  readonly topic: Topic;
  readonly clip?: ClipView;
  readonly hotWash: readonly { readonly name: string; readonly word: string; readonly thing: string }[];
  /** Of everybody for the control side, else the own alone. */
  readonly loads: readonly Omit<Load, 'member'>[];
  readonly moments: readonly ReviewMoment[];
  readonly measures: readonly InjectMeasures[];
  readonly notes: readonly { readonly topic: Topic; readonly text: string }[];
  readonly goal: string;
  readonly actions: readonly Action[];
  readonly declined?: string;
  /** For the control side; ratings for everybody from the summary on. */
  readonly observations: readonly ObservationView[];
  readonly ratings: readonly RatingView[];
  readonly suggestions: readonly Suggestion[];
  readonly whatIfs: readonly WhatIf[];
}

interface ClipView {
  readonly from: number;
  readonly to: number;
  readonly seat?: Seat;
  /** Since it was put on [s]. */
  readonly playedFor: number;
}

interface ObservationView extends Pick<Observation, 'id' | 'seat' | 'sign' | 'topic' | 'text'> {
  readonly after: number;
  readonly by: string;
}

interface RatingView extends Pick<Rated, 'rating' | 'evidence'> {
  readonly objective: string;
  readonly by: string;
}

const reviewFor = createMemo<Member, ReviewView>();

export function viewReview(table: Table, member: Member): ReviewView | undefined {
  const { state, run } = table;
  const control = isControl(member);
  if (state.descents === 0 || (!control && state.stage !== 'resolved')) return undefined;
  const { review, tick } = state;
  const looked = lookBack(table);
  const scorecard = control ? scorecardOf(table) : undefined;
  const from = [review, looked, scorecard, run.whatIfs, review.clip && tick];
  return reviewFor(member, from, () => viewFor(table, member, looked, scorecard));
}

function viewFor(
  { state, plan, run }: Table,
  member: Member,
  { measures, moments }: LookedBack,
  scorecard: Scorecard | undefined,
): ReviewView {
  const { review } = state;
  const control = isControl(member);
  const { step, topic, clip, goal, actions, declined } = review;
  const isRated = control || step === 'summary' || step === 'closed';
  return {
    step,
    topic,
    ...(clip && {
      clip: {
        from: clip.from,
        to: clip.to,
        playedFor: (state.tick - clip.startedTick) / TICK_RATE,
        ...(clip.seat && { seat: clip.seat }),
      },
    }),
    hotWash: review.hotWash.map(({ name, word, thing }) => ({ name, word, thing })),
    loads: review.loads
      .filter((load) => control || load.member === member.id)
      .map(({ member: _member, ...load }) => load),
    moments,
    measures,
    notes: TOPICS.flatMap((about) => {
      const text = review.notes[about];
      return text === undefined ? [] : [{ topic: about, text }];
    }),
    goal,
    actions,
    ...(declined !== undefined && { declined }),
    observations: control ? review.observations.map(viewObservation) : [],
    ratings: isRated
      ? Object.entries(review.ratings).map(([objective, { rating, evidence, by }]) => ({
          objective,
          rating,
          evidence,
          by,
        }))
      : [],
    whatIfs: review.whatIfs.map((change, i) => run.whatIfs[i] ?? { change }),
    suggestions:
      plan.drill === undefined || scorecard === undefined
        ? []
        : suggestRatings(
            plan.drill,
            measures,
            scorecard,
            measures.map(({ inject }) => inject),
          ),
  };
}

function viewObservation({ id, by, seat, sign, topic, text, descentTick }: Observation): ObservationView {
  return { id, sign, topic, text, by, after: descentTick / TICK_RATE, ...(seat !== undefined && { seat }) };
}
