import { paceNow } from '../table/pace.ts';
import { hasUnseen } from '../table/plainText.ts';
import type { Table } from '../table/table.ts';
import type { TableState } from '../table/tableState.ts';
import { SEATS, SEAT_NAMES, type Refusal, type Seat } from '../table/tableTypes.ts';
import { viewDisplay } from '../table/viewDisplay.ts';
import { TICK_RATE } from '../world/constants.ts';
import { askedBy, type TalkCommand } from './commands.ts';
import { addLine, momentOf } from './crewLog.ts';
import { refusal } from './refusal.ts';
import { fillSentence, isSentenceOf, namesSource, type SeatDisplay } from './sentences.ts';
import type { Call, Said, Speaker } from './talk.ts';

/** Most callouts of one descent. */
export const MOST_CALLS = 200;
/** Most of one seat in so many seconds of the clock. */
export const CALL_RATE = { calls: 6, seconds: 10 } as const;
/** [characters] */
export const LONGEST_LINE = 80;

type Sending = Extract<TalkCommand, { kind: 'callOut' | 'say' }>;

/** What is wrong with a callout of this seat. */
export function faultOfSending(state: TableState, from: Seat, command: Sending): Refusal | undefined {
  if (command.to === from) return refusal('own-seat', 'Call out to another seat, or to all.');
  const wrong = command.kind === 'say' ? faultOfLine(command.text) : faultOfSentence(from, command);
  return wrong ?? faultOfCount(state, from);
}

function faultOfSentence(from: Seat, { sentence, source }: Extract<Sending, { kind: 'callOut' }>): Refusal | undefined {
  if (!isSentenceOf(from, sentence))
    return refusal('other-sentence', `${SEAT_NAMES[from]} has no sentence ${JSON.stringify(sentence)}.`);
  if (namesSource(sentence) === (source !== undefined)) return undefined;
  const reason = source === undefined ? 'Say of which source.' : 'This sentence names no source.';
  return refusal('source', reason);
}

/** What is wrong with a typed line. */
function faultOfLine(text: string): Refusal | undefined {
  const length = Array.from(text.trim()).length;
  if (length === 0) return refusal('line', 'Type what you want to say.');
  if (length > LONGEST_LINE) return refusal('line', `The line has ${length} characters; at most ${LONGEST_LINE} fit.`);
  return hasUnseen(text.trim())
    ? refusal('line', 'The line has characters that cannot be seen; use plain text.')
    : undefined;
}

function faultOfCount(state: TableState, from: Seat): Refusal | undefined {
  const { calls } = state.talk;
  if (calls.length >= MOST_CALLS)
    return refusal('calls', `This descent has had ${MOST_CALLS} callouts: no more are taken.`);
  const since = state.tick - CALL_RATE.seconds * TICK_RATE * paceNow(state);
  const recent = calls.filter((call) => call.from.seat === from && call.tick > since);
  if (recent.length < CALL_RATE.calls) return undefined;
  return refusal('calls', `At most ${CALL_RATE.calls} callouts in ${CALL_RATE.seconds} seconds: wait a moment.`);
}

export function faultOfReadBack({ talk }: TableState, seat: Seat, callout: number): Refusal | undefined {
  const call = talk.calls[callout - 1];
  if (call === undefined) return NO_CALL;
  if (!askedBy(call.to, call.from.seat, SEATS).includes(seat))
    return refusal('not-addressed', 'That was not said to your seat.');
  return call.readBack.some((one) => one.seat === seat)
    ? refusal('read-back', 'Your seat has read that back already.')
    : undefined;
}

export function faultOfConfirm({ talk }: TableState, seat: Seat, callout: number): Refusal | undefined {
  const call = talk.calls[callout - 1];
  if (call === undefined) return NO_CALL;
  if (call.from.seat !== seat) return refusal('not-sender', 'Only the seat that said it confirms it.');
  if (call.confirmed !== undefined) return refusal('confirmed', 'That is confirmed already.');
  return waitsFor(call).length === 0 ? undefined : refusal('not-read-back', 'Wait until it has been read back.');
}

/** Seats that have not read back yet. */
export function waitsFor({ to, from, readBack }: Call): readonly Seat[] {
  return askedBy(to, from.seat, SEATS).filter((seat) => readBack.every((one) => one.seat !== seat));
}

/** Sent and not confirmed. */
export function openCalls(calls: readonly Call[]): readonly Call[] {
  return calls.filter(({ confirmed }) => confirmed === undefined);
}

export function send(table: Table, from: Speaker, command: Sending): void {
  const { state } = table;
  const { calls } = state.talk;
  const id = calls.length + 1;
  const call: Call = {
    ...momentOf(table),
    id,
    from,
    to: command.to,
    said: saidBy(table, from.seat, command),
    readBack: [],
  };
  state.talk = { ...state.talk, calls: [...calls, call] };
  addLine(table, { ...from, what: command, call: id });
}

export function readBack(table: Table, by: Speaker, callout: number): void {
  change(table, callout, (call) => ({ ...call, readBack: [...call.readBack, { ...by, ...momentOf(table) }] }));
  addLine(table, { ...by, what: { kind: 'readBack', callout }, call: callout });
}

export function confirm(table: Table, by: Speaker, callout: number): void {
  change(table, callout, (call) => ({ ...call, confirmed: { ...by, ...momentOf(table) } }));
  addLine(table, { ...by, what: { kind: 'confirm', callout }, call: callout });
}

/** What a seat is shown, as far as its sentences go. */
export function displayAt(table: Table, seat: Seat): SeatDisplay {
  const { site, engine } = table.state;
  return { ...viewDisplay(table, [seat]), site, engine };
}

function saidBy(table: Table, seat: Seat, command: Sending): Said {
  if (command.kind === 'say') return { text: command.text.trim() };
  const { sentence, source } = command;
  const values = fillSentence(sentence, source, displayAt(table, seat)) ?? [];
  return { sentence, ...(source !== undefined && { source }), values };
}

function change({ state }: Table, id: number, to: (call: Call) => Call): void {
  state.talk = { ...state.talk, calls: state.talk.calls.map((call) => (call.id === id ? to(call) : call)) };
}

const NO_CALL = refusal('no-call', 'There is no such callout.');
