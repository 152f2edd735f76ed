import { readChoice, readFields, readNumber, readText, type ProblemList } from '../fieldReader.ts';
import type { Tank } from './lander.ts';
import { RANGES, TEXTS } from './landerRanges.ts';
import { readPlanePoint } from './readPoint.ts';

const FIELDS = ['name', 'orientation', 'radius', 'length', 'bottomHeight', 'offset', 'fill', 'density'] as const;

export function readTank(list: ProblemList, value: unknown, path: string): Tank | undefined {
  const fields = readFields(list, value, path, FIELDS);
  if (fields === undefined) return undefined;
  const name = readText(list, fields.name, `${path}.name`, TEXTS.name);
  const orientation = readChoice(list, fields.orientation, `${path}.orientation`, ['upright', 'lying']);
  const radius = readNumber(list, fields.radius, `${path}.radius`, RANGES.radius);
  const length = readNumber(list, fields.length, `${path}.length`, RANGES.length);
  const bottomHeight = readNumber(list, fields.bottomHeight, `${path}.bottomHeight`, RANGES.height);
  const offset = readPlanePoint(list, fields.offset, `${path}.offset`);
  const fill = readNumber(list, fields.fill, `${path}.fill`, RANGES.fill);
  const density = readNumber(list, fields.density, `${path}.density`, RANGES.density);
  if (name === undefined || orientation === undefined || radius === undefined || length === undefined) return undefined;
  if (bottomHeight === undefined || offset === undefined) return undefined;
  if (fill === undefined || density === undefined) return undefined;
  return { name, orientation, radius, length, bottomHeight, offset, fill, density };
}
