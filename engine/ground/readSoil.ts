import { CONDITION_FIELDS } from '../condition/index.ts';
import {
  describe,
  readFields,
  readNumber,
  readChoice,
  report,
  type NumberRange,
  type ProblemList,
} from '../fieldReader.ts';
import type { Soil } from './soil.ts';

const KINDS = ['rigid', 'bearing', 'bekker'] as const satisfies readonly Soil['kind'][];
const FIELDS = {
  rigid: [],
  bearing: ['stiffness', 'strength'],
  bekker: ['cohesive', 'frictional', 'exponent', 'stiffness'],
} as const satisfies { readonly [Kind in Soil['kind']]: readonly string[] };

const RANGES = {
  stiffness: CONDITION_FIELDS.soilStiffness,
  strength: CONDITION_FIELDS.soilStrength,
  cohesive: CONDITION_FIELDS.soilCohesive,
  frictional: CONDITION_FIELDS.soilFrictional,
  exponent: CONDITION_FIELDS.soilExponent,
} as const satisfies Readonly<Record<string, NumberRange>>;
type Field = keyof typeof RANGES | 'kind';

/** The soil of a campaign or a site. */
export function readSoil(list: ProblemList, value: unknown, path: string): Soil | undefined {
  if (value === undefined) return undefined;
  if (typeof value !== 'object' || value === null || !Object.hasOwn(value, 'kind') || !('kind' in value))
    return report(list, 'wrong-type', { path, expected: 'an object with a kind', came: describe(value) });
  const kind = readChoice(list, value.kind, `${path}.kind`, KINDS);
  if (kind === undefined) return undefined;
  const fields = readFields<Field>(list, value, path, ['kind', ...FIELDS[kind]]);
  if (fields === undefined) return undefined;
  const number = (name: keyof typeof RANGES): number | undefined =>
    readNumber(list, fields[name], `${path}.${name}`, RANGES[name]);
  if (kind === 'rigid') return { kind };
  const stiffness = number('stiffness');
  if (kind === 'bearing') {
    const strength = number('strength');
    return stiffness === undefined || strength === undefined ? undefined : { kind, stiffness, strength };
  }
  const cohesive = number('cohesive');
  const frictional = number('frictional');
  const exponent = number('exponent');
  if (cohesive === undefined || frictional === undefined) return undefined;
  return exponent === undefined || stiffness === undefined
    ? undefined
    : { kind, cohesive, frictional, exponent, stiffness };
}
