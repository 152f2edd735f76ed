import { readChoice, readFields, readKind, readNumber, readText, type ProblemList } from '../fieldReader.ts';
import { JUDGMENTS } from '../estimate/index.ts';
import { SOURCES } from '../sensors/index.ts';
import { SEATS, THRUST_RANGE, TILT_RANGE_DEG, type EntryContent } from '../table/index.ts';

type Kind = EntryContent['kind'];
type Reader = (list: ProblemList, value: unknown, path: string) => EntryContent | undefined;

const THRUST = { ...THRUST_RANGE, unit: '%', whole: true };
const TILT = { ...TILT_RANGE_DEG, unit: 'deg', whole: true };
const NAME = { least: 1, most: 24, pattern: /\S/, words: 'a name' };
export const MEMBER = { least: 2, most: 9, pattern: /^m[1-9]\d*$/, words: 'm and a number' };

/** One reader a kind of entry. */
const READERS: Readonly<Record<Kind, Reader>> = {
  joined(list, value, path) {
    const name = readText(list, readFields(list, value, path, ['kind', 'name'])?.name, `${path}.name`, NAME);
    return name === undefined ? undefined : { kind: 'joined', name };
  },
  dropped: bare('dropped'),
  returned: bare('returned'),
  left: bare('left'),
  interrupted: bare('interrupted'),
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

const KINDS = Object.keys(READERS).filter((kind): kind is Kind => kind in READERS);

/** What stands in an entry, strictly. */
export function readContent(list: ProblemList, value: unknown, path: string): EntryContent | undefined {
  const kind = readKind(list, value, path, KINDS);
  return kind === undefined ? undefined : READERS[kind](list, value, path);
}

function bare(
  kind: 'dropped' | 'returned' | 'left' | 'interrupted' | 'leaveSeat' | 'begin' | 'hold' | 'resume' | 'abort' | 'again',
): Reader {
  return (list, value, path) => (readFields(list, value, path, ['kind']) === undefined ? undefined : { kind });
}
