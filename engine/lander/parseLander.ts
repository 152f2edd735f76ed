/**
 * Reads a lander file: JSON of format LANDER_FORMAT, SI, with degrees only where a field's name ends in Deg. Strict: unknown
 * fields are refused, nothing is clamped or defaulted, and every problem is listed. First the shape of each field, then,
 * when all are in order, the checks between them.
 */
import {
  createProblemList,
  describe,
  readFields,
  readList,
  readNumber,
  readText,
  report,
  type ProblemList,
} from '../fieldReader.ts';
import { accept, refuse, type FieldProblem, type Result } from '../result.ts';
import { checkLander } from './checkLander.ts';
import type { Engine, Lander } from './lander.ts';
import { COUNTS, LANDER_FORMAT, RANGES, TEXTS } from './landerRanges.ts';
import { readLegs } from './readLegs.ts';
import { readPart } from './readPart.ts';
import { readBodyPoint } from './readPoint.ts';
import { readTank } from './readTank.ts';

/** The lander that a parsed JSON document describes, deep-frozen, or everything that is wrong with the document. */
export function parseLander(json: unknown): Result<Lander, readonly FieldProblem[]> {
  const list = createProblemList('lander');
  const lander = readLander(list, json);
  if (lander !== undefined && list.problems.length === 0) checkLander(list, lander);
  if (lander === undefined || list.problems.length > 0) return refuse(list.problems);
  return accept(deepFreeze(lander));
}

const FIELDS = ['format', 'id', 'name', 'summary', 'parts', 'tanks', 'legs', 'hull', 'engine', 'probeLength'] as const;

function readLander(list: ProblemList, json: unknown): Lander | undefined {
  const fields = readFields(list, json, '', FIELDS);
  if (fields === undefined) return undefined;
  if (fields.format !== LANDER_FORMAT && fields.format !== undefined) {
    // another format would be wrong in every field
    list.problems.length = 0;
    const expected = JSON.stringify(LANDER_FORMAT);
    return report(list, 'unknown-format', { path: 'format', expected, came: describe(fields.format) });
  }
  const id = readText(list, fields.id, 'id', TEXTS.id);
  const name = readText(list, fields.name, 'name', TEXTS.name);
  const summary = readText(list, fields.summary, 'summary', TEXTS.summary);
  const parts = readList(list, fields.parts, 'parts', COUNTS.parts, (item, path) => readPart(list, item, path));
  const tanks = readList(list, fields.tanks, 'tanks', COUNTS.tanks, (item, path) => readTank(list, item, path));
  const legs = readLegs(list, fields.legs, 'legs');
  const hull = readList(list, fields.hull, 'hull', COUNTS.hull, (item, path) =>
    readBodyPoint(list, item, path, RANGES.hullHeight),
  );
  const engine = readEngine(list, fields.engine, 'engine');
  const probeLength = readNumber(list, fields.probeLength, 'probeLength', RANGES.probeLength);
  if (id === undefined || name === undefined || summary === undefined || parts === undefined) return undefined;
  if (tanks === undefined || legs === undefined || hull === undefined) return undefined;
  if (engine === undefined || probeLength === undefined) return undefined;
  return { id, name, summary, parts, tanks, legs, hull, engine, probeLength };
}

const ENGINE_FIELDS = ['maxThrust', 'minThrust', 'specificImpulse', 'lag', 'attitudeTorque'] as const;

function readEngine(list: ProblemList, value: unknown, path: string): Engine | undefined {
  if (value === undefined) return undefined;
  const fields = readFields(list, value, path, ENGINE_FIELDS);
  if (fields === undefined) return undefined;
  const maxThrust = readNumber(list, fields.maxThrust, `${path}.maxThrust`, RANGES.thrust);
  const minThrust = readNumber(list, fields.minThrust, `${path}.minThrust`, RANGES.thrust);
  const specificImpulse = readNumber(list, fields.specificImpulse, `${path}.specificImpulse`, RANGES.specificImpulse);
  const lag = readNumber(list, fields.lag, `${path}.lag`, RANGES.lag);
  const attitudeTorque = readNumber(list, fields.attitudeTorque, `${path}.attitudeTorque`, RANGES.torque);
  if (maxThrust === undefined || minThrust === undefined || specificImpulse === undefined) return undefined;
  if (lag === undefined || attitudeTorque === undefined) return undefined;
  return { maxThrust, minThrust, specificImpulse, lag, attitudeTorque };
}

function deepFreeze<Value>(value: Value): Value {
  if (typeof value === 'object' && value !== null) for (const inner of Object.values(value)) deepFreeze(inner);
  return Object.freeze(value);
}
