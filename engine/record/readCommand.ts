import { readChoice, readFields, readKind, readNumber, readText, readTruth, type ProblemList } from '../fieldReader.ts';
import { JUDGMENTS } from '../estimate/index.ts';
import { VEHICLE_PARTS } from '../faults/index.ts';
import { SOURCES } from '../sensors/index.ts';
import {
  CEILING_RANGE,
  CHANGE_KINDS,
  CONDUCTS,
  DELAY_RANGE_S,
  DESCENT_RATE_RANGE_TENTHS,
  DRIFT_RANGE_TENTHS,
  FACING_RANGE,
  GIVEN_ROLES,
  GROUND_NOTES,
  LIMIT_RANGE,
  NAMED_CAUSES,
  PACES,
  SEATS,
  SPOT_APPROACHES,
  STANCE_RANGE_PERCENT,
  THRUST_RANGE,
  TILT_RANGE_DEG,
  type Command,
} from '../table/index.ts';
import {
  ACTION_STATES,
  LOAD_RANGE,
  LONGEST_NOTE,
  LONGEST_WORD,
  MEASURE_KINDS,
  OPEN_STEPS,
  RATINGS,
  SIGNS_OF_WORK,
  TOPICS,
} from '../review/index.ts';
import { ADDRESSEES, LONGEST_LINE, LONGEST_REASON, POLL_ANSWERS, POLL_QUESTIONS, SENTENCES } from '../talk/index.ts';

type Kind = Command['kind'];

/** Reads the value of one field; undefined where it is wrong, which is written down. */
interface FieldReader<Value> {
  readonly read: (list: ProblemList, value: unknown, path: string) => Value | undefined;
  readonly isOptional?: boolean;
}

type FieldsOf<Of extends Kind> = Omit<Extract<Command, { readonly kind: Of }>, 'kind'>;
type Readers<Of extends Kind> = {
  readonly [Name in keyof FieldsOf<Of>]-?: FieldReader<Exclude<FieldsOf<Of>[Name], undefined>>;
};

export const MEMBER = { least: 2, most: 9, pattern: /^m[1-9]\d*$/, words: 'm and a number' };

const member = text(MEMBER);
const truth: FieldReader<boolean> = { read: readTruth };
const seat = choice(SEATS);
const source = choice(SOURCES);
/** Of an inject, an objective, a world. */
const name = text({ least: 1, most: 40, pattern: /^[a-z][a-zA-Z0-9-]*$/, words: 'a name as files have it' });
const tilt = whole(TILT_RANGE_DEG, 'deg');
/** Of a callout, an alert or an action. */
const talkNumber = whole({ least: 1, most: 1e6 }, '-');
const LINE = { least: 1, most: LONGEST_LINE, pattern: /\S/, words: 'one line' };

const NOTE = { least: 1, most: LONGEST_NOTE, pattern: /\S/, words: 'a few words' };
const note = text(NOTE);
const blankNote = text({ ...NOTE, least: 0, pattern: /^/ });
const topic = choice(TOPICS);
const load = whole(LOAD_RANGE, '-');
/** Of a descent; a day at the most. */
const seconds: FieldReader<number> = {
  read: (list, value, path) => readNumber(list, value, path, { least: 0, most: 86_400, unit: 's' }),
};

/** What each kind of command holds besides its kind: the one shape of commands on the wire and in records. */
const COMMANDS: { readonly [Of in Kind]: Readers<Of> } = {
  takeSeat: { seat },
  leaveSeat: {},
  letIn: { member },
  handOver: { member },
  deal: { member, seat },
  judgeSource: { source, judgment: choice(JUDGMENTS) },
  nameCause: { source, cause: choice(NAMED_CAUSES) },
  realign: {},
  setCeiling: { percent: whole(CEILING_RANGE, '%') },
  armCutOff: { armed: truth },
  fireCutOff: {},
  setCutAtContact: { on: truth },
  shutLine: { shut: truth },
  // as far as any site reaches; where this one ends the judge knows
  markSpot: { meters: whole({ least: -100_000, most: 100_000 }, 'm'), approach: choice(SPOT_APPROACHES) },
  clearSpot: {},
  declareGround: { ground: choice(GROUND_NOTES) },
  stateLimit: { hundredths: whole(LIMIT_RANGE, 'cm/s') },
  orderFacing: { steps: whole(FACING_RANGE, '-') },
  begin: {},
  setThrust: { percent: whole(THRUST_RANGE, '%') },
  setTilt: { degrees: tilt },
  orderDescentRate: { tenths: whole(DESCENT_RATE_RANGE_TENTHS, 'dm/s') },
  orderDrift: { tenths: whole(DRIFT_RANGE_TENTHS, 'dm/s') },
  orderLean: { degrees: tilt },
  setPace: { pace: choice(PACES) },
  setRole: { member, role: choice(GIVEN_ROLES) },
  handOverTable: { member },
  remove: { member },
  setLock: { locked: truth },
  setReady: { ready: truth },
  stop: {},
  liftStop: {},
  end: {},
  sendInject: { inject: name },
  skipInject: { inject: name },
  delayInject: { inject: name, seconds: whole(DELAY_RANGE_S, 's') },
  setConduct: { conduct: choice(CONDUCTS) },
  turnOver: {},
  takeBack: {},
  hold: {},
  resume: {},
  abort: {},
  again: {},
  wait: {},
  callOut: { sentence: choice(SENTENCES), source: optional(source), to: choice(ADDRESSEES) },
  say: { text: text(LINE), to: choice(ADDRESSEES) },
  readBack: { callout: talkNumber },
  confirm: { callout: talkNumber },
  callPoll: { question: choice(POLL_QUESTIONS) },
  answerPoll: { answer: choice(POLL_ANSWERS), reason: text({ ...LINE, least: 0, most: LONGEST_REASON, pattern: /^/ }) },
  decide: { decision: choice(POLL_ANSWERS) },
  acknowledge: { alert: talkNumber },
  observe: { seat: optional(seat), sign: choice(SIGNS_OF_WORK), topic, text: blankNote },
  bookmark: { text: blankNote, seconds: optional(seconds) },
  rate: { objective: name, rating: choice(RATINGS), evidence: blankNote },
  correctMeasure: { inject: name, measure: choice(MEASURE_KINDS), seconds: optional(seconds), reason: note },
  washHot: { word: text({ ...NOTE, most: LONGEST_WORD }), thing: blankNote },
  sayLoad: {
    thought: load,
    hands: load,
    haste: load,
    success: load,
    effort: load,
    strain: load,
    text: blankNote,
  },
  setDebriefStep: { step: choice(OPEN_STEPS) },
  setTopic: { topic },
  showClip: { from: seconds, to: seconds, seat: optional(seat) },
  hideClip: {},
  noteTopic: { topic, text: blankNote },
  setGoal: { text: blankNote },
  setAction: {
    id: optional(talkNumber),
    text: note,
    owner: blankNote,
    due: blankNote,
    state: choice(ACTION_STATES),
    isRule: truth,
  },
  dropAction: { id: talkNumber },
  askWhatIf: {
    change: choice(CHANGE_KINDS),
    source: optional(source),
    part: optional(choice(VEHICLE_PARTS)),
    seconds: optional(seconds),
    tenths: optional(whole(DESCENT_RATE_RANGE_TENTHS, 'dm/s')),
    world: optional(name),
    percent: optional(whole(STANCE_RANGE_PERCENT, '%')),
  },
  closeDebrief: {},
  declineDebrief: { reason: note },
};

export const COMMAND_KINDS = Object.keys(COMMANDS).filter((kind): kind is Kind => kind in COMMANDS);

/** A command from outside, strictly. Ranges that depend on the table are the judge's to hold. */
export function readCommand(list: ProblemList, value: unknown, path: string): Command | undefined {
  const kind = readKind(list, value, path, COMMAND_KINDS);
  if (kind === undefined) return undefined;
  const readers: readonly (readonly [string, FieldReader<unknown>])[] = Object.entries(COMMANDS[kind]);
  const named = (isOptional: boolean) =>
    readers.filter(([, reader]) => (reader.isOptional ?? false) === isOptional).map(([name]) => name);
  const fields = readFields(list, value, path, ['kind', ...named(false)], named(true));
  if (fields === undefined) return undefined;
  const command: Record<string, unknown> = { kind };
  for (const [name, reader] of readers) {
    const read = reader.read(list, fields[name], `${path}.${name}`);
    if (read !== undefined) command[name] = read;
  }
  return isComplete(command, ['kind', ...named(false)]) ? command : undefined;
}

/** `COMMANDS` has a reader for each field of each kind: with all that are required it is a command. */
function isComplete(
  read: Readonly<Record<string, unknown>>,
  required: readonly string[],
): read is Readonly<Record<string, unknown>> & Command {
  return required.every((name) => read[name] !== undefined);
}

function choice<Choice extends string | number>(choices: readonly Choice[]): FieldReader<Choice> {
  return { read: (list, value, path) => readChoice(list, value, path, choices) };
}

function optional<Value>(reader: FieldReader<Value>): FieldReader<Value> {
  return { ...reader, isOptional: true };
}

function whole(range: { readonly least: number; readonly most: number }, unit: string): FieldReader<number> {
  return { read: (list, value, path) => readNumber(list, value, path, { ...range, unit, whole: true }) };
}

function text(rule: Parameters<typeof readText>[3]): FieldReader<string> {
  return { read: (list, value, path) => readText(list, value, path, rule) };
}
