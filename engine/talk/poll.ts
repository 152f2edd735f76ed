import type { Table } from '../table/table.ts';
import type { TableState } from '../table/tableState.ts';
import { SEATS, type Refusal, type Seat } from '../table/tableTypes.ts';
import { hasUnseen } from '../table/plainText.ts';
import { ANSWERS_TO, type PollAnswer, type PollQuestion, type TalkCommand } from './commands.ts';
import { addLine, momentOf } from './crewLog.ts';
import { refusal } from './refusal.ts';
import { openPoll, type Answer, type Poll, type Speaker } from './talk.ts';

/** [characters] */
export const LONGEST_REASON = 40;

/** What may be asked now: stay once the lander is down as far as the crew knows, go before. */
export function questionNow({ stage, talk }: TableState): PollQuestion {
  return stage === 'resolved' || talk.isDown ? 'stay' : 'go';
}

export function faultOfPoll(state: TableState, question: PollQuestion): Refusal | undefined {
  if (openPoll(state.talk) !== undefined) return refusal('poll-open', 'Decide the poll that is open first.');
  if (question === questionNow(state)) return undefined;
  return refusal(
    'poll-question',
    question === 'go' ? 'It is down: ask whether to stay.' : 'It is not down yet: ask whether to go.',
  );
}

export function faultOfAnswer(
  { talk }: TableState,
  seat: Seat,
  { answer, reason }: Extract<TalkCommand, { kind: 'answerPoll' }>,
): Refusal | undefined {
  const poll = openPoll(talk);
  if (poll === undefined) return NO_POLL;
  if (poll.by.seat === seat) return refusal('poll-own', 'Who asks does not answer.');
  if (poll.allIn !== undefined) return refusal('poll-in', 'All answers are in: they stand.');
  if (!ANSWERS_TO[poll.question].includes(answer)) return NO_ANSWER;
  const length = Array.from(reason.trim()).length;
  if (length > LONGEST_REASON)
    return refusal('reason', `The reason has ${length} characters; at most ${LONGEST_REASON} fit.`);
  return hasUnseen(reason)
    ? refusal('reason', 'The reason has characters that cannot be seen; use plain text.')
    : undefined;
}

export function faultOfDecision({ talk }: TableState, decision: PollAnswer): Refusal | undefined {
  const poll = openPoll(talk);
  if (poll === undefined) return NO_POLL;
  if (!ANSWERS_TO[poll.question].includes(decision)) return NO_ANSWER;
  // no answer counts as no: to go on, all are heard
  const isYes = decision === ANSWERS_TO[poll.question][0];
  if (!isYes || poll.allIn !== undefined) return undefined;
  return refusal('poll-waits', 'Not every seat has answered: wait for them, or decide against it.');
}

export function callPoll(table: Table, by: Speaker, question: PollQuestion): void {
  const { polls } = table.state.talk;
  const poll: Poll = { ...momentOf(table), id: polls.length + 1, question, by, answers: [] };
  table.state.talk = { ...table.state.talk, polls: [...polls, poll] };
  addLine(table, { ...by, what: { kind: 'callPoll', question } });
}

/** The answer of a seat takes the place of the one that it gave before. */
export function answerPoll(
  table: Table,
  by: Speaker,
  { answer, reason, because }: Pick<Answer, 'answer' | 'reason' | 'because'>,
): void {
  const poll = openPoll(table.state.talk);
  if (poll === undefined) return;
  const moment = momentOf(table);
  const given: Answer = { ...by, ...moment, answer, reason: reason.trim(), ...(because !== undefined && { because }) };
  const isNew = poll.answers.every(({ seat }) => seat !== by.seat);
  const answers = isNew ? [...poll.answers, given] : poll.answers.map((one) => (one.seat === by.seat ? given : one));
  const isIn = answers.length === SEATS.length - 1;
  replace(table, { ...poll, answers, ...(isIn && { allIn: moment }) });
  addLine(table, { ...by, what: { kind: 'answerPoll', answer, reason: reason.trim() } });
}

export function decide(table: Table, by: Speaker, decision: PollAnswer): void {
  const poll = openPoll(table.state.talk);
  if (poll === undefined) return;
  replace(table, { ...poll, decided: { ...by, ...momentOf(table), decision } });
  addLine(table, { ...by, what: { kind: 'decide', decision } });
}

/** Seats that are asked and have not answered. */
export function unanswered({ by, answers }: Poll): readonly Seat[] {
  return SEATS.filter((seat) => seat !== by.seat && answers.every((one) => one.seat !== seat));
}

function replace({ state }: Table, poll: Poll): void {
  state.talk = { ...state.talk, polls: [...state.talk.polls.slice(0, -1), poll] };
}

const NO_POLL = refusal('no-poll', 'No poll is open.');
const NO_ANSWER = refusal('answer', 'That is no answer to this question.');
