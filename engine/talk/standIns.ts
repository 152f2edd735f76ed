import { decider, isCovered } from '../table/attendance.ts';
import { paceNow } from '../table/pace.ts';
import { flightKnown, marginNow } from '../table/flightKnown.ts';
import { readPropellant } from '../table/seatReadings.ts';
import type { Table } from '../table/table.ts';
import type { TableState } from '../table/tableState.ts';
import type { Seat } from '../table/tableTypes.ts';
import { TICK_RATE } from '../world/constants.ts';
import { confirm, MOST_CALLS, readBack, send, waitsFor } from './callout.ts';
import { ANSWERS_TO } from './commands.ts';
import { answerPoll, unanswered } from './poll.ts';
import type { Sentence } from './sentences.ts';
import { openPoll, type Call, type Moment, type StandInReason } from './talk.ts';

/**
 * What stand-ins say where they are spoken to: they read back, confirm, answer a question and a poll, each after the time that a person takes, in seconds of the
 * clock, also on hold. They go by what their seat is shown.
 */
const READ_BACK_AFTER = 3;
const CONFIRM_AFTER = 2;
const ANSWER_AFTER = 5;
const VOTE_AFTER = 4;

/** A drift this near to the tip limit is too fast [-]: beyond it a margin is called thin. */
const OUTSIDE = 1;
/** With less than this left a stand-in does not go [s of hover]. */
const TOO_LITTLE = 15;
/** Leaning more than this it does not stay [rad]: 20 deg. */
const LEANS = Math.PI / 9;

/** Who answers which question of Lead, and with what. */
const ANSWERS: Readonly<Partial<Record<Sentence, readonly [Seat, Sentence]>>> = {
  askHeightAge: ['sensors', 'heightAge'],
  askUsable: ['propellant', 'usable'],
  askLimit: ['site', 'limit'],
  askMotion: ['flying', 'motion'],
};

/** What the stand-ins say in this tick to what was said to them. */
export function answerAsStandIns(table: Table): void {
  const { state } = table;
  for (const call of state.talk.calls) {
    if (call.confirmed !== undefined) continue;
    const waiting = waitsFor(call);
    if (hasPassed(state, call, READ_BACK_AFTER))
      for (const seat of waiting) if (isCovered(state, seat)) readBack(table, { seat }, call.id);
    const { from } = call;
    const since = call.readBack.at(-1) ?? call;
    if (waiting.length === 0 && isCovered(state, from.seat) && hasPassed(state, since, CONFIRM_AFTER))
      confirm(table, { seat: from.seat }, call.id);
  }
  answerQuestions(table);
  vote(table);
}

type Sentenced = Extract<Parameters<typeof send>[2], { kind: 'callOut' }>;
type Spoken = Omit<Sentenced, 'kind' | 'to'>;

/** Says something at a seat where nobody is, to whoever decides; nothing where that is the seat itself. */
export function speakUp(table: Table, seat: Seat, what: Spoken): void {
  const to = decider(table.state)?.seat ?? 'lead';
  const { calls } = table.state.talk;
  if (to === seat || calls.length >= MOST_CALLS || calls.some((call) => isUnheard(call, seat, what))) return;
  send(table, { seat }, { kind: 'callOut', ...what, to });
}

/** Whether the same, with older figures, still waits to be read back: then it is not said again. */
function isUnheard(call: Call, from: Seat, { sentence, source }: Spoken): boolean {
  const { said } = call;
  const isSame = 'sentence' in said && said.sentence === sentence && said.source === source;
  return isSame && call.from.seat === from && waitsFor(call).length > 0;
}

function answerQuestions(table: Table): void {
  const { state } = table;
  const { calls, standIns } = state.talk;
  const next = calls[standIns.answered];
  if (next === undefined) return;
  const answer = questionOf(next);
  if (answer !== undefined && !hasPassed(state, next, ANSWER_AFTER)) return;
  state.talk = { ...state.talk, standIns: { ...standIns, answered: next.id } };
  if (answer === undefined || calls.length >= MOST_CALLS) return;
  const [seat, sentence] = answer;
  const isAsked = next.to === seat || next.to === 'all';
  if (isAsked && isCovered(state, seat)) send(table, { seat }, { kind: 'callOut', sentence, to: next.from.seat });
}

function questionOf({ said }: Call): readonly [Seat, Sentence] | undefined {
  return 'sentence' in said ? ANSWERS[said.sentence] : undefined;
}

function vote(table: Table): void {
  const { state } = table;
  const poll = openPoll(state.talk);
  if (poll === undefined || poll.allIn !== undefined || !hasPassed(state, poll, VOTE_AFTER)) return;
  const [yes, no] = ANSWERS_TO[poll.question];
  for (const seat of unanswered(poll)) {
    if (!isCovered(state, seat)) continue;
    const because = poll.question === 'go' ? whyNoGo(table, seat) : whyNoStay(table);
    answerPoll(
      table,
      { seat },
      {
        answer: because === undefined ? yes : no,
        reason: '',
        ...(because !== undefined && { because }),
      },
    );
  }
}

/** What keeps the stand-in at a seat from going, by what the seat is shown. */
function whyNoGo(table: Table, seat: Seat): StandInReason | undefined {
  const { plan, run, state } = table;
  if (state.stage !== 'descending') return undefined;
  const known = flightKnown(run, state);
  const { predicted } = marginNow(run);
  switch (seat) {
    case 'sensors':
      return isBelievingWrong(table) ? 'sourceWrong' : undefined;
    case 'propellant':
      return readPropellant({ plan, run, known }, state.reckonedBurn).seconds < TOO_LITTLE
        ? 'propellantLow'
        : undefined;
    case 'flying':
    case 'site':
      return predicted !== undefined && predicted.utilisation > OUTSIDE ? 'marginOutside' : undefined;
    case 'lead':
      return undefined;
  }
  return seat satisfies never;
}

/** A source of height or motion that looks wrong and is believed all the same. */
function isBelievingWrong({ run: { believed }, state }: Table): boolean {
  return (['altimeter', 'velocityRadar'] as const).some((source) => {
    const looks = believed?.sources[source].state;
    const isBelieved = (state.judgments[source] ?? 'accepted') === 'accepted';
    return isBelieved && (looks === 'suspect' || looks === 'failed');
  });
}

function whyNoStay({ run, state }: Table): StandInReason | undefined {
  const { angle } = flightKnown(run, state);
  return Math.abs(angle) > LEANS ? 'leaning' : undefined;
}

/** So many seconds of the clock since then. */
export function hasPassed(state: TableState, { tick }: Moment, seconds: number): boolean {
  return state.tick - tick >= seconds * TICK_RATE * paceNow(state);
}
