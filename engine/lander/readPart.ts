import { readChoice, readFields, readKind, readNumber, readText, type ProblemList } from '../fieldReader.ts';
import { PART_KINDS, type Part, type PartShape } from './lander.ts';
import { RANGES, TEXTS } from './landerRanges.ts';
import { readBodyPoint, readTriple } from './readPoint.ts';

export function readPart(list: ProblemList, value: unknown, path: string): Part | undefined {
  const fields = readFields(list, value, path, ['name', 'kind', 'mass', 'center', 'shape']);
  if (fields === undefined) return undefined;
  const name = readText(list, fields.name, `${path}.name`, TEXTS.name);
  const kind = readChoice(list, fields.kind, `${path}.kind`, PART_KINDS);
  const mass = readNumber(list, fields.mass, `${path}.mass`, RANGES.mass);
  const center = readBodyPoint(list, fields.center, `${path}.center`);
  const shape = readShape(list, fields.shape, `${path}.shape`);
  if (name === undefined || kind === undefined || mass === undefined) return undefined;
  if (center === undefined || shape === undefined) return undefined;
  return { name, kind, mass, center, shape };
}

const SHAPES = ['point', 'cylinder', 'tube', 'box', 'inertia'] as const satisfies readonly PartShape['kind'][];

/** The kind of a shape decides which other fields it has. */
function readShape(list: ProblemList, value: unknown, path: string): PartShape | undefined {
  const kind = readKind(list, value, path, SHAPES);
  if (kind === undefined) return undefined;
  if (kind === 'point') return readFields(list, value, path, ['kind']) && { kind };
  if (kind === 'box') {
    const fields = readFields(list, value, path, ['kind', 'size']);
    const side = RANGES.length;
    const size = readTriple(list, fields?.size, `${path}.size`, [side, side, side]);
    return size && { kind, size };
  }
  if (kind === 'inertia') {
    const fields = readFields(list, value, path, ['kind', 'moments']);
    const moment = RANGES.moment;
    const moments = readTriple(list, fields?.moments, `${path}.moments`, [moment, moment, moment]);
    return moments && { kind, moments };
  }
  const fields = readFields(list, value, path, ['kind', 'radius', 'length', 'axis']);
  const radius = readNumber(list, fields?.radius, `${path}.radius`, RANGES.radius);
  const length = readNumber(list, fields?.length, `${path}.length`, RANGES.length);
  const axis = readChoice(list, fields?.axis, `${path}.axis`, ['y', 'z']);
  if (radius === undefined || length === undefined || axis === undefined) return undefined;
  return { kind, radius, length, axis };
}
