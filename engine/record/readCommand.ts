import { readChoice, readFields, readKind, readNumber, readText, type ProblemList } from '../fieldReader.ts';
import { JUDGMENTS } from '../estimate/index.ts';
import { SOURCES } from '../sensors/index.ts';
import { SEATS, THRUST_RANGE, TILT_RANGE_DEG, type Command } from '../table/index.ts';

type Kind = Command['kind'];
type Reader = (list: ProblemList, value: unknown, path: string) => Command | undefined;

const THRUST = { ...THRUST_RANGE, unit: '%', whole: true };
const TILT = { ...TILT_RANGE_DEG, unit: 'deg', whole: true };
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

type BareKind = { [K in Kind]: { readonly kind: K } extends Extract<Command, { kind: K }> ? K : never }[Kind];

function bare(kind: BareKind): Reader {
  return (list, value, path) => (readFields(list, value, path, ['kind']) === undefined ? undefined : { kind });
}
