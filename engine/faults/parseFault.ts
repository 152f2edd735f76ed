import {
  createProblemList,
  describe,
  readChoice,
  readFields,
  readKind,
  readNumber,
  report,
  type Fields,
  type ProblemList,
} from '../fieldReader.ts';
import { accept, refuse, type FieldProblem, type Result } from '../result.ts';
import { CHANNELS, SOURCES, type Source } from '../sensors/sources.ts';
import { readBias } from './bias.ts';
import { readCutOffFails } from './cutOffFails.ts';
import { readDelay } from './delay.ts';
import { readDrift } from './drift.ts';
import { readFalseInvalid } from './falseInvalid.ts';
import { readFalseValid } from './falseValid.ts';
import {
  SENSOR_FAULT_KINDS,
  VEHICLE_FAULT_SOURCES,
  type Fault,
  type FaultSpan,
  type SensorFault,
  type SensorFaultFrame,
  type UndatedFault,
  type VehicleFault,
  type VehicleFaultKind,
} from './fault.ts';
import { TICKS } from './faultRanges.ts';
import { readFreeze } from './freeze.ts';
import { readIndicationAbsent } from './indicationAbsent.ts';
import { readLeak } from './leak.ts';
import { readLegMissing } from './legMissing.ts';
import { readLegNotLatched } from './legNotLatched.ts';
import { readLegSoft } from './legSoft.ts';
import { readNoData } from './noData.ts';
import { readNoise } from './noise.ts';
import { readSpike } from './spike.ts';
import { readThrustLoss } from './thrustLoss.ts';
import { readThrustOffset } from './thrustOffset.ts';

type SensorFaultKind = (typeof SENSOR_FAULT_KINDS)[number];
type Read<Frame, Read> = (list: ProblemList, json: unknown, frame: Frame) => Read | undefined;

const SENSOR_READERS: Readonly<Record<SensorFaultKind, Read<SensorFaultFrame, SensorFault>>> = {
  noData: readNoData,
  freeze: readFreeze,
  bias: readBias,
  drift: readDrift,
  noise: readNoise,
  delay: readDelay,
  spike: readSpike,
  falseValid: readFalseValid,
  falseInvalid: readFalseInvalid,
};

const VEHICLE_READERS: Readonly<Record<VehicleFaultKind, Read<FaultSpan, VehicleFault>>> = {
  thrustLoss: (list, json, span) => readThrustLoss(list, json, { ...span, source: 'engine' }),
  thrustOffset: (list, json, span) => readThrustOffset(list, json, { ...span, source: 'engine' }),
  cutOffFails: (list, json, span) => readCutOffFails(list, json, { ...span, source: 'engine' }),
  leak: (list, json, span) => readLeak(list, json, { ...span, source: 'tanks' }),
  legSoft: (list, json, span) => readLegSoft(list, json, { ...span, source: 'legs' }),
  legMissing: (list, json, span) => readLegMissing(list, json, { ...span, source: 'legs' }),
  legNotLatched: (list, json, span) => readLegNotLatched(list, json, { ...span, source: 'legs' }),
  indicationAbsent: (list, json, span) => readIndicationAbsent(list, json, { ...span, source: 'legs' }),
};

/** Kinds that act on one channel where told so; the others act on the source as a whole. */
const BY_CHANNEL: readonly string[] = ['freeze', 'bias', 'drift', 'noise', 'spike'];

const KINDS = [...SENSOR_FAULT_KINDS, ...keysOf(VEHICLE_READERS)];
type Kind = (typeof KINDS)[number];

/** Reads a fault from foreign data. Each problem names its field, what was expected and what came. */
export function parseFault(json: unknown): Result<Fault, readonly FieldProblem[]> {
  const list = createProblemList('fault');
  const kind = readKind(list, json, '', KINDS);
  const fault = kind === undefined ? undefined : readDatedFault(list, json, kind);
  if (fault === undefined || list.problems.length > 0) return refuse(list.problems);
  return accept(fault);
}

/** Reads a fault of a larger document that is dated elsewhere, such as by the inject of a drill. */
export function readUndatedFault(list: ProblemList, json: unknown, path: string): UndatedFault | undefined {
  if (json === undefined) return undefined;
  const own = createProblemList('fault');
  const kind = readKind(own, json, '', KINDS);
  const fields = kind && readFields(own, json, '', ['source', 'kind', 'parameters'], ['channel']);
  const fault = kind && fields && readFault(own, kind, fields, { fromTick: 0 });
  for (const { code, path: inside, ...problem } of own.problems)
    report(list, code.slice('fault/'.length), { path: inside === '' ? path : `${path}.${inside}`, ...problem });
  if (fault === undefined || own.problems.length > 0) return undefined;
  const { fromTick: _never, toTick: _end, ...undated } = fault;
  return undated;
}

function readDatedFault(list: ProblemList, json: unknown, kind: Kind): Fault | undefined {
  const fields = readFields(list, json, '', ['source', 'kind', 'parameters', 'fromTick'], ['channel', 'toTick']);
  return fields && readFault(list, kind, fields, readSpan(list, fields.fromTick, fields.toTick));
}

function readFault(
  list: ProblemList,
  kind: Kind,
  fields: Fields<'source' | 'parameters' | 'channel'>,
  span: FaultSpan,
): Fault | undefined {
  if (isVehicleKind(kind)) {
    readChoice(list, fields.source, 'source', [VEHICLE_FAULT_SOURCES[kind]]);
    refuseChannel(list, fields.channel);
    return fields.parameters === undefined ? undefined : VEHICLE_READERS[kind](list, fields.parameters, span);
  }
  const source = readChoice(list, fields.source, 'source', SOURCES);
  if (!BY_CHANNEL.includes(kind)) refuseChannel(list, fields.channel);
  if (source === undefined) return undefined;
  const channel = readChannel(list, fields.channel, source);
  const frame = { source, ...span, ...(channel !== undefined && { channel }) };
  return fields.parameters === undefined ? undefined : SENSOR_READERS[kind](list, fields.parameters, frame);
}

/** Problems are written down; what comes back then is not used. */
function readSpan(list: ProblemList, from: unknown, to: unknown): FaultSpan {
  const fromTick = readNumber(list, from, 'fromTick', TICKS) ?? 0;
  const toTick = readNumber(list, to, 'toTick', TICKS);
  if (toTick === undefined) return { fromTick };
  if (toTick <= fromTick)
    report(list, 'ends-too-soon', {
      path: 'toTick',
      expected: `more than fromTick, ${fromTick}`,
      came: String(toTick),
    });
  return { fromTick, toTick };
}

function readChannel(list: ProblemList, channel: unknown, source: Source): string | undefined {
  return readChoice(list, channel, 'channel', CHANNELS[source]);
}

function refuseChannel(list: ProblemList, channel: unknown): void {
  if (channel === undefined) return;
  const expected = `no channel: this kind acts on the source as a whole; by channel act ${BY_CHANNEL.join(', ')}`;
  report(list, 'unknown-field', { path: 'channel', expected, came: describe(channel) });
}

function isVehicleKind(kind: string): kind is VehicleFaultKind {
  return Object.hasOwn(VEHICLE_READERS, kind);
}

function keysOf<Key extends string>(record: Readonly<Record<Key, unknown>>): readonly Key[] {
  const keys: Key[] = [];
  for (const key in record) keys.push(key);
  return keys;
}
