import type { AlertLevel, Display } from '../drill/drill.ts';
import type { Source } from '../sensors/index.ts';
import type { Command, MemberId, Seat } from '../table/tableTypes.ts';
import { TALK_KINDS, type Addressee, type PollAnswer, type PollQuestion } from './commands.ts';
import type { Sentence } from './sentences.ts';

/** All that was said in one descent: the part of the state of a table that belongs to talking. Plain data, replaced and never written into. */
export interface TalkState {
  readonly calls: readonly Call[];
  readonly polls: readonly Poll[];
  /** Those whose cause is there, or was until a moment ago, and those that say that it has gone. */
  readonly alerts: readonly Alert[];
  /** How many were ever raised; numbers the next. */
  readonly raised: number;
  /** For how many looks in a row the cause of an alert that is not raised yet has been there, by its key. */
  readonly rising: Readonly<Record<string, number>>;
  readonly log: readonly LogLine[];
  /** Whether the lander is down, as far as the crew knows: then stay is asked, and no more go. */
  readonly isDown: boolean;
  readonly standIns: StandInMemory;
}

export interface Moment {
  /** Of the table. */
  readonly tick: number;
  /** Of the descent. */
  readonly descentTick: number;
}

/** Who does something: a seat, and the member there; no member where the stand-in does it. */
export interface Speaker {
  readonly seat: Seat;
  readonly member?: MemberId;
}

/** A callout. Open until its sender confirms what was read back. */
export interface Call extends Moment {
  /** From 1 on, in order. */
  readonly id: number;
  readonly from: Speaker;
  readonly to: Addressee;
  readonly said: Said;
  /** Who read back, in order. */
  readonly readBack: readonly (Speaker & Moment)[];
  readonly confirmed?: Speaker & Moment;
}

/** A prepared sentence with the numbers of the sender's display at that tick (`fillSentence`), none where it had none; or a typed line. */
export type Said =
  | { readonly sentence: Sentence; readonly source?: Source; readonly values: readonly number[] }
  | { readonly text: string };

export interface Poll extends Moment {
  readonly id: number;
  readonly question: PollQuestion;
  /** Who asks, and does not answer. */
  readonly by: Speaker;
  /** One a seat, in the order in which they first came. */
  readonly answers: readonly Answer[];
  /** When the last of them came: from then on they stand, and everybody sees them. */
  readonly allIn?: Moment;
  readonly decided?: Speaker & Moment & { readonly decision: PollAnswer };
}

export interface Answer extends Speaker, Moment {
  readonly answer: PollAnswer;
  /** A few words of a person; may be empty. */
  readonly reason: string;
  /** What a stand-in goes by. */
  readonly because?: StandInReason;
}

/** Why a stand-in says no. */
export const STAND_IN_REASONS = ['sourceWrong', 'marginOutside', 'propellantLow', 'leaning'] as const;
export type StandInReason = (typeof STAND_IN_REASONS)[number];

/** What raises an alert: something that the state shows, or words that were sent to these displays. */
export const ALERT_CAUSES = ['sourceLost', 'marginOutside', 'propellantLow', 'dry', 'cutOff', 'told'] as const;
export type AlertCause = (typeof ALERT_CAUSES)[number];

export interface Alert extends Moment {
  readonly id: number;
  readonly cause: AlertCause;
  readonly source?: Source;
  /** Of a `told` one. */
  readonly text?: string;
  readonly level: AlertLevel;
  readonly to: readonly Display[];
  readonly acknowledged: readonly Seat[];
  /** Of a `told` one: the response for want of which it was sent. With that its cause has gone. */
  readonly until?: string;
  /** Its cause has gone: it says so for a while, and goes. */
  readonly isCleared: boolean;
  /** For how many looks in a row its cause has been away; once it is cleared, for how many it has said so. */
  readonly gone: number;
}

/** One thing that somebody did, as the command that it was; of a callout the number. */
export interface LogLine extends Moment {
  /** Where who did it sat; absent for somebody without a seat. */
  readonly seat?: Seat;
  /** Absent where a stand-in did it. */
  readonly member?: MemberId;
  readonly what: Logged;
  readonly call?: number;
}

/** What goes into the log of the crew. */
export const LOGGED_KINDS = [
  ...TALK_KINDS,
  'judgeSource',
  'nameCause',
  'realign',
  'setCeiling',
  'armCutOff',
  'fireCutOff',
  'setCutAtContact',
  'shutLine',
  'markSpot',
  'clearSpot',
  'declareGround',
  'stateLimit',
  'orderFacing',
  'abort',
  'hold',
  'resume',
  'stop',
  'liftStop',
  'setPace',
  'setConduct',
] as const satisfies readonly Command['kind'][];
export type LoggedKind = (typeof LOGGED_KINDS)[number];
export type Logged = Extract<Command, { readonly kind: LoggedKind }>;

/** What the stand-ins remember of what they saw and said. */
export interface StandInMemory {
  /** For how many looks in a row each source has looked wrong, or right again. */
  readonly wrong: Readonly<Partial<Record<Source, number>>>;
  readonly right: Readonly<Partial<Record<Source, number>>>;
  /** Sources that were called out as wrong, and not yet as restored. */
  readonly told: readonly Source[];
  /** The least of the round numbers of seconds that was called out [s]. */
  readonly seconds?: number;
  readonly toldLimit: boolean;
  readonly toldSlope: boolean;
  /** Height of the last call [m]. */
  readonly height?: number;
  /** Up to which callout questions have been answered. */
  readonly answered: number;
  /** Injects that the stand-in at Lead has done what they ask for. */
  readonly heeded: readonly string[];
  /** For how many looks in a row each rule of the card has called for an abort. */
  readonly broken: Readonly<Record<string, number>>;
  /** For how many looks in a row the lander has been down. */
  readonly down: number;
}

export const NO_TALK: TalkState = {
  calls: [],
  polls: [],
  alerts: [],
  raised: 0,
  rising: {},
  log: [],
  isDown: false,
  standIns: {
    wrong: {},
    right: {},
    told: [],
    toldLimit: false,
    toldSlope: false,
    answered: 0,
    heeded: [],
    broken: {},
    down: 0,
  },
};

/** The poll that waits for its decision. */
export function openPoll({ polls }: TalkState): Poll | undefined {
  const last = polls.at(-1);
  return last?.decided === undefined ? last : undefined;
}
