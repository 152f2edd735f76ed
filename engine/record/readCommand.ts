import { readChoice, readFields, readKind, readNumber, readText, type ProblemList } from '../fieldReader.ts';
import { JUDGMENTS } from '../estimate/index.ts';
import { SOURCES } from '../sensors/index.ts';
import {
  DESCENT_RATE_RANGE_TENTHS,
  DRIFT_RANGE_TENTHS,
  PACES,
  SEATS,
  THRUST_RANGE,
  TILT_RANGE_DEG,
  type Command,
} from '../table/index.ts';

type Kind = Command['kind'];
type Reader = (list: ProblemList, value: unknown, path: string) => Command | undefined;

const THRUST = { ...THRUST_RANGE, unit: '%', whole: true };
const TILT = { ...TILT_RANGE_DEG, unit: 'deg', whole: true };
const DESCENT_RATE = { ...DESCENT_RATE_RANGE_TENTHS, unit: 'dm/s', whole: true };
const DRIFT = { ...DRIFT_RANGE_TENTHS, unit: 'dm/s', whole: true };
export const MEMBER = { least: 2, most: 9, pattern: /^m[1-9]\d*$/, words: 'm and a number' };

/** One reader a kind of command: the one shape of commands on the wire and in records. */
const READERS: Readonly<Record<Kind, Reader>> = {
  takeSeat(list, value, path) {
    const seat = readChoice(list, readFields(list, value, path, ['kind', 'seat'])?.seat, `${path}.seat`, SEATS);
    return seat === undefined ? undefined : { kind: 'takeSeat', seat };
  },
  leaveSeat: bare('leaveSeat'),
  letIn(list, value, path) {
    const fields = readFields(list, value, path, ['kind', 'member']);
    const member = readText(list, fields?.member, `${path}.member`, MEMBER);
    return member === undefined ? undefined : { kind: 'letIn', member };
  },
  judgeSource(list, value, path) {
    const fields = readFields(list, value, path, ['kind', 'source', 'judgment']);
    const source = readChoice(list, fields?.source, `${path}.source`, SOURCES);
    const judgment = readChoice(list, fields?.judgment, `${path}.judgment`, JUDGMENTS);
    return source === undefined || judgment === undefined ? undefined : { kind: 'judgeSource', source, judgment };
  },
  begin: bare('begin'),
  setThrust(list, value, path) {
    const fields = readFields(list, value, path, ['kind', 'percent']);
    const percent = readNumber(list, fields?.percent, `${path}.percent`, THRUST);
    return percent === undefined ? undefined : { kind: 'setThrust', percent };
  },
  setTilt(list, value, path) {
    const fields = readFields(list, value, path, ['kind', 'degrees']);
    const degrees = readNumber(list, fields?.degrees, `${path}.degrees`, TILT);
    return degrees === undefined ? undefined : { kind: 'setTilt', degrees };
  },
  orderDescentRate: tenths('orderDescentRate', DESCENT_RATE),
  orderDrift: tenths('orderDrift', DRIFT),
  orderLean(list, value, path) {
    const fields = readFields(list, value, path, ['kind', 'degrees']);
    const degrees = readNumber(list, fields?.degrees, `${path}.degrees`, TILT);
    return degrees === undefined ? undefined : { kind: 'orderLean', degrees };
  },
  setPace(list, value, path) {
    const pace = readChoice(list, readFields(list, value, path, ['kind', 'pace'])?.pace, `${path}.pace`, PACES);
    return pace === undefined ? undefined : { kind: 'setPace', pace };
  },
  hold: bare('hold'),
  resume: bare('resume'),
  abort: bare('abort'),
  again: bare('again'),
};

export const COMMAND_KINDS = Object.keys(READERS).filter((kind): kind is Kind => kind in READERS);

/** A command from outside, strictly. Ranges that depend on the table are the judge's to hold. */
export function readCommand(list: ProblemList, value: unknown, path: string): Command | undefined {
  const kind = readKind(list, value, path, COMMAND_KINDS);
  return kind === undefined ? undefined : READERS[kind](list, value, path);
}

function tenths(kind: 'orderDescentRate' | 'orderDrift', range: typeof DRIFT | typeof DESCENT_RATE): Reader {
  return (list, value, path) => {
    const read = readNumber(list, readFields(list, value, path, ['kind', 'tenths'])?.tenths, `${path}.tenths`, range);
    return read === undefined ? undefined : { kind, tenths: read };
  };
}

type BareKind = { [K in Kind]: { readonly kind: K } extends Extract<Command, { kind: K }> ? K : never }[Kind];

function bare(kind: BareKind): Reader {
  return (list, value, path) => (readFields(list, value, path, ['kind']) === undefined ? undefined : { kind });
}
