import { readChoice, readFields, readKind, readNumber, readText, readTruth, type ProblemList } from '../fieldReader.ts';
import { JUDGMENTS } from '../estimate/index.ts';
import { SOURCES } from '../sensors/index.ts';
import {
  CEILING_RANGE,
  DESCENT_RATE_RANGE_TENTHS,
  DRIFT_RANGE_TENTHS,
  GROUND_NOTES,
  LIMIT_RANGE,
  NAMED_CAUSES,
  PACES,
  SEATS,
  SPOT_APPROACHES,
  THRUST_RANGE,
  TILT_RANGE_DEG,
  type Command,
} from '../table/index.ts';

type Kind = Command['kind'];
type Reader = (list: ProblemList, value: unknown, path: string) => Command | undefined;

const THRUST = { ...THRUST_RANGE, unit: '%', whole: true };
const CEILING = { ...CEILING_RANGE, unit: '%', whole: true };
const LIMIT = { ...LIMIT_RANGE, unit: 'cm/s', whole: true };
/** As far as any site reaches; where this one ends the judge knows. */
const SPOT = { least: -100_000, most: 100_000, unit: 'm', whole: true };
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
  handOver(list, value, path) {
    const fields = readFields(list, value, path, ['kind', 'member']);
    const member = readText(list, fields?.member, `${path}.member`, MEMBER);
    return member === undefined ? undefined : { kind: 'handOver', member };
  },
  deal(list, value, path) {
    const fields = readFields(list, value, path, ['kind', 'member', 'seat']);
    const member = readText(list, fields?.member, `${path}.member`, MEMBER);
    const seat = readChoice(list, fields?.seat, `${path}.seat`, SEATS);
    return member === undefined || seat === undefined ? undefined : { kind: 'deal', member, seat };
  },
  nameCause(list, value, path) {
    const fields = readFields(list, value, path, ['kind', 'source', 'cause']);
    const source = readChoice(list, fields?.source, `${path}.source`, SOURCES);
    const cause = readChoice(list, fields?.cause, `${path}.cause`, NAMED_CAUSES);
    return source === undefined || cause === undefined ? undefined : { kind: 'nameCause', source, cause };
  },
  realign: bare('realign'),
  setCeiling(list, value, path) {
    const fields = readFields(list, value, path, ['kind', 'percent']);
    const percent = readNumber(list, fields?.percent, `${path}.percent`, CEILING);
    return percent === undefined ? undefined : { kind: 'setCeiling', percent };
  },
  armCutOff(list, value, path) {
    const armed = readTruth(list, readFields(list, value, path, ['kind', 'armed'])?.armed, `${path}.armed`);
    return armed === undefined ? undefined : { kind: 'armCutOff', armed };
  },
  fireCutOff: bare('fireCutOff'),
  setCutAtContact(list, value, path) {
    const on = readTruth(list, readFields(list, value, path, ['kind', 'on'])?.on, `${path}.on`);
    return on === undefined ? undefined : { kind: 'setCutAtContact', on };
  },
  shutLine(list, value, path) {
    const shut = readTruth(list, readFields(list, value, path, ['kind', 'shut'])?.shut, `${path}.shut`);
    return shut === undefined ? undefined : { kind: 'shutLine', shut };
  },
  markSpot(list, value, path) {
    const fields = readFields(list, value, path, ['kind', 'meters', 'approach']);
    const meters = readNumber(list, fields?.meters, `${path}.meters`, SPOT);
    const approach = readChoice(list, fields?.approach, `${path}.approach`, SPOT_APPROACHES);
    return meters === undefined || approach === undefined ? undefined : { kind: 'markSpot', meters, approach };
  },
  clearSpot: bare('clearSpot'),
  declareGround(list, value, path) {
    const fields = readFields(list, value, path, ['kind', 'ground']);
    const ground = readChoice(list, fields?.ground, `${path}.ground`, GROUND_NOTES);
    return ground === undefined ? undefined : { kind: 'declareGround', ground };
  },
  stateLimit(list, value, path) {
    const fields = readFields(list, value, path, ['kind', 'hundredths']);
    const hundredths = readNumber(list, fields?.hundredths, `${path}.hundredths`, LIMIT);
    return hundredths === undefined ? undefined : { kind: 'stateLimit', hundredths };
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
  wait: bare('wait'),
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
