import type { Change } from '../table/fork.ts';
import type { Command, Seat } from '../table/tableTypes.ts';
import type { Action, LoadSide, MeasureKind, Observation, OPEN_STEPS, Rating, Topic } from './review.ts';

/** What may be asked of a table by way of noting and looking back. */
export type ReviewCommand =
  | {
      readonly kind: 'observe';
      readonly seat?: Seat;
      readonly sign: Observation['sign'];
      readonly topic: Topic;
      readonly text: string;
    }
  /** Marks this moment, or one that has passed [s of the descent]. */
  | { readonly kind: 'bookmark'; readonly text: string; readonly seconds?: number }
  | { readonly kind: 'rate'; readonly objective: string; readonly rating: Rating; readonly evidence: string }
  /** Puts a measure right [s after the inject]; without seconds it was not observed. */
  | {
      readonly kind: 'correctMeasure';
      readonly inject: string;
      readonly measure: MeasureKind;
      readonly seconds?: number;
      readonly reason: string;
    }
  | { readonly kind: 'washHot'; readonly word: string; readonly thing: string }
  /** How hard it was, from the own seat. */
  | ({ readonly kind: 'sayLoad'; readonly text: string } & Readonly<Record<LoadSide, number>>)
  | { readonly kind: 'setDebriefStep'; readonly step: (typeof OPEN_STEPS)[number] }
  | { readonly kind: 'setTopic'; readonly topic: Topic }
  | { readonly kind: 'showClip'; readonly from: number; readonly to: number; readonly seat?: Seat }
  | { readonly kind: 'hideClip' }
  | { readonly kind: 'noteTopic'; readonly topic: Topic; readonly text: string }
  | { readonly kind: 'setGoal'; readonly text: string }
  /** A new action, or, with its number, one anew. */
  | ({ readonly kind: 'setAction'; readonly id?: number } & Omit<Action, 'id'>)
  | { readonly kind: 'dropAction'; readonly id: number }
  /** The descent flown again with one thing changed, beside what happened. */
  | ({ readonly kind: 'askWhatIf'; readonly change: Change['kind'] } & Omit<Change, 'kind'>)
  | { readonly kind: 'closeDebrief' }
  | { readonly kind: 'declineDebrief'; readonly reason: string };

const REVIEW_KINDS = [
  'observe',
  'bookmark',
  'rate',
  'correctMeasure',
  'washHot',
  'sayLoad',
  'setDebriefStep',
  'setTopic',
  'showClip',
  'hideClip',
  'noteTopic',
  'setGoal',
  'setAction',
  'dropAction',
  'askWhatIf',
  'closeDebrief',
  'declineDebrief',
] as const satisfies readonly ReviewCommand['kind'][];

export function isReview(command: Command): command is ReviewCommand {
  return REVIEW_KINDS.some((kind) => kind === command.kind);
}

export function changeOf(asked: Extract<ReviewCommand, { kind: 'askWhatIf' }>): Change {
  const { kind: _kind, change, ...rest } = asked;
  return { kind: change, ...rest };
}
