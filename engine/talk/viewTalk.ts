import type { AlertLevel, Display } from '../drill/drill.ts';
import type { Judgment } from '../estimate/index.ts';
import type { Source } from '../sensors/index.ts';
import { decider } from '../table/attendance.ts';
import { createMemo } from '../table/memo.ts';
import type { GroundNote } from '../table/siteNotes.ts';
import { findMember, isControl, type Member, type TableState } from '../table/tableState.ts';
import type { Conduct, NamedCause, Seat } from '../table/tableTypes.ts';
import { TICK_RATE } from '../world/constants.ts';
import { openCalls, waitsFor } from './callout.ts';
import type { Addressee, PollAnswer, PollQuestion } from './commands.ts';
import { questionNow, unanswered } from './poll.ts';
import type { Sentence } from './sentences.ts';
import type { AlertCause, Answer, Call, LoggedKind, LogLine, Poll, StandInReason } from './talk.ts';

/** What one member hears and reads of what was said; facilitator and evaluator all of it. Times are seconds of the descent. */
export interface TalkView {
  /** Callouts to or from the own seat, or to all: the latest, and older ones that wait for this seat. In order. */
  readonly calls: readonly CallView[];
  /** How many loops are open at the whole table. */
  readonly openCount: number;
  /** Which they are, for whoever decides and the control side; empty for others. */
  readonly open: readonly OpenLoopView[];
  /** What may be asked now. */
  readonly question: PollQuestion;
  /** The poll that is open, or was decided a moment ago. */
  readonly poll?: PollView;
  readonly alerts: readonly AlertView[];
  /** The latest lines, in order. */
  readonly log: readonly LogLineView[];
}

export interface CallView {
  readonly id: number;
  readonly after: number;
  readonly from: Seat;
  readonly byStandIn: boolean;
  readonly to: Addressee;
  /** A prepared sentence, or else a typed line. */
  readonly sentence?: Sentence;
  readonly source?: Source;
  readonly values: readonly number[];
  readonly text?: string;
  /** Seats that have not read back. */
  readonly waitsFor: readonly Seat[];
  readonly isConfirmed: boolean;
}

interface OpenLoopView {
  readonly id: number;
  readonly after: number;
  readonly from: Seat;
  readonly to: Addressee;
  /** Nobody is left who has to read back: the sender has to confirm. */
  readonly isReadBack: boolean;
}

export interface PollView {
  readonly id: number;
  readonly question: PollQuestion;
  readonly by: Seat;
  /** All of them once all are in; before that the own one. */
  readonly answers: readonly AnswerView[];
  readonly isIn: boolean;
  readonly unanswered: readonly Seat[];
  readonly decision?: PollAnswer;
}

export interface AnswerView {
  readonly seat: Seat;
  readonly byStandIn: boolean;
  readonly answer: PollAnswer;
  readonly reason: string;
  readonly because?: StandInReason;
}

export interface AlertView {
  readonly id: number;
  readonly cause: AlertCause;
  readonly source?: Source;
  readonly text?: string;
  readonly level: AlertLevel;
  readonly isAcknowledged: boolean;
  /** Its cause has gone; it is about to go too. */
  readonly isCleared: boolean;
}

export interface LogLineView {
  readonly after: number;
  readonly seat?: Seat;
  /** Of whoever did it; absent for a stand-in. */
  readonly name?: string;
  readonly kind: LoggedKind;
  readonly call?: number;
  readonly source?: Source;
  readonly judgment?: Judgment;
  readonly cause?: NamedCause;
  readonly ground?: GroundNote;
  readonly answer?: PollAnswer;
  /** Meters of a spot, hundredths of a limit, percent of a ceiling or of the pace of the clock. */
  readonly figure?: number;
  /** Of what is set on or off. */
  readonly on?: boolean;
  readonly conduct?: Conduct;
}

/** So many of the latest callouts, and lines of the log, are shown. */
const LATEST_CALLS = 12;
const LATEST_LINES = 24;
/** A decided poll stays on the table for so long [tick]. */
const POLL_SHOWN = 8 * TICK_RATE;

const talkFor = createMemo<Member, TalkView>();

export function viewTalk(state: TableState, member: Member): TalkView {
  const decides = decider(state) === member;
  const question = questionNow(state);
  const poll = shownPoll(state);
  return talkFor(member, [state.talk, state.members, decides, question, poll], () =>
    viewFor(state, member, { decides, question, poll }),
  );
}

function viewFor(
  state: TableState,
  member: Member,
  { decides, question, poll }: { decides: boolean; question: PollQuestion; poll: Poll | undefined },
): TalkView {
  const { talk } = state;
  const { seat } = member;
  const hearsAll = isControl(member);
  const heard = talk.calls.filter((call) => hearsAll || isHeardAt(call, seat));
  const calls = heard.filter((call, i) => i >= heard.length - LATEST_CALLS || isWaitingFor(call, seat));
  const open = openCalls(talk.calls);
  return {
    calls: calls.map(viewCall),
    openCount: open.length,
    open: hearsAll || decides ? open.map(viewLoop) : [],
    question,
    ...(poll !== undefined && { poll: viewPoll(poll, hearsAll ? 'all' : seat) }),
    alerts: talk.alerts
      .filter(({ to }) => hearsAll || to.includes(seat ?? ROOM))
      .map((alert) => ({
        id: alert.id,
        cause: alert.cause,
        ...(alert.source !== undefined && { source: alert.source }),
        ...(alert.text !== undefined && { text: alert.text }),
        level: alert.level,
        isAcknowledged: seat !== undefined && alert.acknowledged.includes(seat),
        isCleared: alert.isCleared,
      })),
    log: talk.log
      .filter((line) => hearsAll || isReadAt(line, seat, talk.calls))
      .slice(-LATEST_LINES)
      .map((line) => viewLine(line, state)),
  };
}

/** All that was said and done in a descent: for looking back, when nothing of it is secret any more. */
export function wholeTalk(state: TableState): Pick<TalkView, 'calls' | 'log'> {
  const { calls, log } = state.talk;
  return { calls: calls.map(viewCall), log: log.map((line) => viewLine(line, state)) };
}

const ROOM: Display = 'room';

/** Whether a callout is to or from a seat, or to all. */
function isHeardAt({ to, from }: Call, seat: Seat | undefined): boolean {
  return to === 'all' || (seat !== undefined && (to === seat || from.seat === seat));
}

/** Whether a callout still wants something of a seat. */
function isWaitingFor(call: Call, seat: Seat | undefined): boolean {
  if (seat === undefined || call.confirmed !== undefined) return false;
  return call.from.seat === seat || waitsFor(call).includes(seat);
}

function viewCall(call: Call): CallView {
  const { id, from, to, said, confirmed } = call;
  return {
    id,
    after: secondsOf(call),
    from: from.seat,
    byStandIn: from.member === undefined,
    to,
    ...('text' in said ? { text: said.text, values: [] } : said),
    waitsFor: waitsFor(call),
    isConfirmed: confirmed !== undefined,
  };
}

function viewLoop(call: Call): OpenLoopView {
  const { id, from, to } = call;
  return { id, after: secondsOf(call), from: from.seat, to, isReadBack: waitsFor(call).length === 0 };
}

function shownPoll({ talk, tick }: TableState): Poll | undefined {
  const last = talk.polls.at(-1);
  const isOver = last?.decided !== undefined && tick - last.decided.tick > POLL_SHOWN;
  return isOver ? undefined : last;
}

function viewPoll(poll: Poll, reader: Seat | 'all' | undefined): PollView {
  const { id, question, by, allIn, decided } = poll;
  const isIn = allIn !== undefined;
  // whoever decides without waiting ends the secrecy too
  const isOpen = isIn || decided !== undefined || reader === 'all';
  const shown = poll.answers.filter((answer) => isOpen || answer.seat === reader);
  return {
    id,
    question,
    by: by.seat,
    answers: shown.map(viewAnswer),
    isIn,
    unanswered: unanswered(poll),
    ...(decided !== undefined && { decision: decided.decision }),
  };
}

function viewAnswer({ seat, member, answer, reason, because }: Answer): AnswerView {
  return { seat, byStandIn: member === undefined, answer, reason, ...(because !== undefined && { because }) };
}

/** Of callouts those that the seat hears; of answers to a poll its own; what Sensors merely puts under check stays there. */
function isReadAt({ seat: doer, what, call }: LogLine, seat: Seat | undefined, calls: readonly Call[]): boolean {
  if (call !== undefined) {
    const of = calls[call - 1];
    return of !== undefined && isHeardAt(of, seat);
  }
  if (what.kind === 'answerPoll' || what.kind === 'acknowledge') return doer === seat;
  return what.kind !== 'judgeSource' || what.judgment === 'rejected' || doer === seat;
}

function viewLine(line: LogLine, state: TableState): LogLineView {
  const { seat, member, what, call } = line;
  const name = member === undefined ? undefined : findMember(state, member)?.name;
  return {
    after: secondsOf(line),
    ...(seat !== undefined && { seat }),
    ...(name !== undefined && { name }),
    kind: what.kind,
    ...(call !== undefined && { call }),
    ...detailsOf(what),
  };
}

type Details = Omit<LogLineView, 'after' | 'seat' | 'name' | 'kind' | 'call'>;

/** What a line says besides its kind. */
function detailsOf(what: LogLine['what']): Details {
  switch (what.kind) {
    case 'judgeSource':
      return { source: what.source, judgment: what.judgment };
    case 'nameCause':
      return { source: what.source, cause: what.cause };
    case 'markSpot':
      return { figure: what.meters };
    case 'stateLimit':
      return { figure: what.hundredths };
    case 'orderFacing':
      return { figure: what.steps };
    case 'setCeiling':
      return { figure: what.percent };
    case 'declareGround':
      return { ground: what.ground };
    case 'answerPoll':
      return { answer: what.answer };
    case 'decide':
      return { answer: what.decision };
    case 'callPoll':
      return { answer: what.question };
    case 'shutLine':
      return { on: what.shut };
    case 'armCutOff':
      return { on: what.armed };
    case 'setCutAtContact':
      return { on: what.on };
    case 'setPace':
      return { figure: 100 * what.pace };
    case 'setConduct':
      return { conduct: what.conduct };
    case 'callOut':
    case 'say':
    case 'readBack':
    case 'confirm':
    case 'acknowledge':
    case 'realign':
    case 'fireCutOff':
    case 'clearSpot':
    case 'abort':
    case 'hold':
    case 'resume':
    case 'stop':
    case 'liftStop':
      return {};
  }
  return what satisfies never;
}

function secondsOf({ descentTick }: { readonly descentTick: number }): number {
  return descentTick / TICK_RATE;
}
