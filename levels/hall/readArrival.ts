import { readChoice, readFields, readList, readNumber, readText, readTruth } from '../../engine/fieldReader.ts';
import type { ProblemList } from '../../engine/fieldReader.ts';
import type { Lander } from '../../engine/lander/index.ts';
import { isLying, layOnSide } from '../../engine/structure/index.ts';
import { DEFAULT_FRICTION, reshape, SHAPE_FACTS, SHAPE_FIELDS, type Reshaping } from '../../engine/study/index.ts';
import { WORLDS } from '../../engine/worlds.ts';
import { findLander, LANDERS } from '../landers.ts';
import type { HallArrival } from './hall.ts';
import { LINE, RANGES } from './ranges.ts';

const NEEDED = ['name', 'lander', 'world', 'slopeDeg', 'descentRate', 'horizontalSpeed'] as const;
const OPTIONAL = ['friction', 'yawDeg', 'shape', 'lying', 'missing'] as const;

/** One touchdown of a film: a lander of the shelf with what the scene changes of it, and how it arrives. */
export function readArrival(list: ProblemList, value: unknown, path: string): HallArrival | undefined {
  const fields = readFields(list, value, path, NEEDED, OPTIONAL);
  if (fields === undefined) return undefined;
  const at = (field: string) => `${path}.${field}`;
  const { friction: grip = DEFAULT_FRICTION, yawDeg: turn = 0, missing: gone = [] } = fields;
  const name = readText(list, fields.name, at('name'), { ...LINE, most: 30 });
  const world = readChoice(
    list,
    fields.world,
    at('world'),
    WORLDS.map(({ id }) => id),
  );
  const lander = readLander(list, fields, path);
  const slopeDeg = readNumber(list, fields.slopeDeg, at('slopeDeg'), RANGES.slopeDeg);
  const descentRate = readNumber(list, fields.descentRate, at('descentRate'), RANGES.descentRate);
  const horizontalSpeed = readNumber(list, fields.horizontalSpeed, at('horizontalSpeed'), RANGES.horizontalSpeed);
  const friction = readNumber(list, grip, at('friction'), RANGES.friction);
  const yawDeg = readNumber(list, turn, at('yawDeg'), RANGES.yawDeg);
  const missing = lander === undefined ? undefined : readMissing(list, gone, at('missing'), lander);
  if (name === undefined || world === undefined || lander === undefined || missing === undefined) return undefined;
  if (slopeDeg === undefined || descentRate === undefined || horizontalSpeed === undefined) return undefined;
  if (friction === undefined || yawDeg === undefined) return undefined;
  return { name, lander, missing, world, slopeDeg, descentRate, horizontalSpeed, friction, yawDeg };
}

function readLander(
  list: ProblemList,
  fields: { readonly lander?: unknown; readonly shape?: unknown; readonly lying?: unknown },
  path: string,
): Lander | undefined {
  const { shape: changed = {}, lying: onSide = false } = fields;
  const id = readChoice(
    list,
    fields.lander,
    `${path}.lander`,
    LANDERS.map((one) => one.id),
  );
  const shape = readShape(list, changed, `${path}.shape`);
  const lies = readTruth(list, onSide, `${path}.lying`);
  const base = id === undefined ? undefined : findLander(id);
  if (base === undefined || shape === undefined || lies === undefined) return undefined;
  const shaped = reshape(base, shape);
  if (!shaped.ok) {
    // the rule that a changed lander breaks may stand in a field that the file does not have
    list.problems.push(...shaped.error.slice(0, 1).map((problem) => ({ ...problem, path: `${path}.shape` })));
    return undefined;
  }
  return lies && !isLying(shaped.value) ? layOnSide(shaped.value) : shaped.value;
}

function readShape(list: ProblemList, value: unknown, path: string): Reshaping | undefined {
  const fields = readFields(list, value, path, [], SHAPE_FIELDS);
  if (fields === undefined) return undefined;
  const before = list.problems.length;
  const entries = SHAPE_FIELDS.flatMap((field) => {
    const read = readNumber(list, fields[field], `${path}.${field}`, SHAPE_FACTS[field]);
    return read === undefined ? [] : [[field, read] as const];
  });
  return list.problems.length === before ? Object.fromEntries(entries) : undefined;
}

/** Numbers of legs in a file begin at 1; indices at 0. */
function readMissing(list: ProblemList, value: unknown, path: string, { legs }: Lander): readonly number[] | undefined {
  const range = { least: 1, most: legs.length, unit: '-', whole: true };
  const rule = { least: 0, most: legs.length - 1, of: 'numbers of legs' };
  return readList(list, value, path, rule, (item, at) => {
    const leg = readNumber(list, item, at, range);
    return leg === undefined ? undefined : leg - 1;
  });
}
