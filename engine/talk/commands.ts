import type { Source } from '../sensors/index.ts';
import type { Command, Seat } from '../table/tableTypes.ts';
import type { Sentence } from './sentences.ts';

/** To whom something is said: one seat, or every other one. */
export const ADDRESSEES = ['lead', 'flying', 'sensors', 'propellant', 'site', 'all'] as const;
export type Addressee = (typeof ADDRESSEES)[number];

/** Asked before the lander meets the ground, and after. */
export const POLL_QUESTIONS = ['go', 'stay'] as const;
export type PollQuestion = (typeof POLL_QUESTIONS)[number];

/** Of the first question the first two, of the second the others. */
export const POLL_ANSWERS = ['go', 'noGo', 'stay', 'noStay'] as const;
export type PollAnswer = (typeof POLL_ANSWERS)[number];

export const ANSWERS_TO: Readonly<Record<PollQuestion, readonly [PollAnswer, PollAnswer]>> = {
  go: ['go', 'noGo'],
  stay: ['stay', 'noStay'],
};

/** What may be asked of the table by way of talking. Callouts, polls and alerts go by their numbers, from 1 on. */
export type TalkCommand =
  /** One of the prepared sentences of the own seat; the table puts in the numbers of that seat's display. */
  | { readonly kind: 'callOut'; readonly sentence: Sentence; readonly source?: Source; readonly to: Addressee }
  /** One typed line. */
  | { readonly kind: 'say'; readonly text: string; readonly to: Addressee }
  /** Says again what was heard, numbers and all. */
  | { readonly kind: 'readBack'; readonly callout: number }
  /** Closes the loop: what was read back is what was meant. */
  | { readonly kind: 'confirm'; readonly callout: number }
  | { readonly kind: 'callPoll'; readonly question: PollQuestion }
  | { readonly kind: 'answerPoll'; readonly answer: PollAnswer; readonly reason: string }
  /** Closes the poll. */
  | { readonly kind: 'decide'; readonly decision: PollAnswer }
  | { readonly kind: 'acknowledge'; readonly alert: number };

export const TALK_KINDS = [
  'callOut',
  'say',
  'readBack',
  'confirm',
  'callPoll',
  'answerPoll',
  'decide',
  'acknowledge',
] as const satisfies readonly TalkCommand['kind'][];

export function isTalk(command: Command): command is TalkCommand {
  return TALK_KINDS.some((kind) => kind === command.kind);
}

/** The seats that are addressed, each of which has to read back. */
export function askedBy(to: Addressee, from: Seat, seats: readonly Seat[]): readonly Seat[] {
  return to === 'all' ? seats.filter((seat) => seat !== from) : [to];
}
