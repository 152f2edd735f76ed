/** Reads distributions of a campaign document. */
import {
  describe,
  readChoice,
  readFields,
  readList,
  readNumber,
  report,
  type NumberRange,
  type ProblemList,
} from '../fieldReader.ts';
import { INPUT_FACTS, type CampaignInput } from './campaignInputs.ts';
import { DISTRIBUTION_KINDS, reach, shareKept, type Choice, type Distribution } from './distribution.ts';

const MOST_CHOICES = 64;
const WEIGHT: NumberRange = { least: 1e-12, most: 1e12, unit: '-' };
/** A truncated normal keeps at least this share of the normal: less is surely a slip, and soon too little to invert. */
const LEAST_SHARE_KEPT = 1e-6;

const FIELDS = {
  constant: ['value'],
  uniform: ['low', 'high'],
  normal: ['mean', 'deviation'],
  'truncated normal': ['mean', 'deviation', 'low', 'high'],
  rayleigh: ['scale'],
  discrete: ['choices'],
} as const satisfies { readonly [Kind in Distribution['kind']]: readonly string[] };
type Field = (typeof FIELDS)[keyof typeof FIELDS][number] | 'kind';

/** The distribution of one input: a plain number is a constant. All that it can bring out lies in the input's range. */
export function readDistribution(
  list: ProblemList,
  value: unknown,
  path: string,
  input: CampaignInput,
): Distribution | undefined {
  const before = list.problems.length;
  const distribution =
    typeof value === 'number' ? constant(list, value, path, input) : readShaped(list, value, path, input);
  if (distribution === undefined || list.problems.length > before) return undefined;
  const { low, high } = reach(distribution);
  return checkReach(list, path, input, { low, high, kind: distribution.kind }) ? distribution : undefined;
}

function constant(list: ProblemList, value: number, path: string, input: CampaignInput): Distribution | undefined {
  const read = readNumber(list, value, path, rangeOf(input));
  return read === undefined ? undefined : { kind: 'constant', value: read };
}

function readShaped(list: ProblemList, value: unknown, path: string, input: CampaignInput): Distribution | undefined {
  const kind = kindOf(list, value, path);
  if (kind === undefined) return undefined;
  const optional: readonly 'high'[] = kind === 'rayleigh' ? ['high'] : [];
  const fields = readFields<Field, 'high'>(list, value, path, ['kind', ...FIELDS[kind]], optional);
  if (fields === undefined) return undefined;
  const range = rangeOf(input);
  const number = (name: Field): number | undefined => readNumber(list, fields[name], `${path}.${name}`, range);
  const spread = (name: Field): number | undefined =>
    readNumber(list, fields[name], `${path}.${name}`, spreadRange(input));
  switch (kind) {
    case 'constant':
      return whole({ kind, value: number('value') });
    case 'uniform':
      return inOrder(list, path, whole({ kind, low: number('low'), high: number('high') }));
    case 'normal':
      return whole({ kind, mean: number('mean'), deviation: spread('deviation') });
    case 'truncated normal': {
      const ends = { low: number('low'), high: number('high') };
      return keepsEnough(
        list,
        path,
        inOrder(list, path, whole({ kind, mean: number('mean'), deviation: spread('deviation'), ...ends })),
      );
    }
    case 'rayleigh': {
      const high = fields.high === undefined ? {} : { high: spread('high') };
      return whole({ kind, scale: spread('scale'), ...high });
    }
    case 'discrete': {
      const choices = readList(list, fields.choices, `${path}.choices`, CHOICES, (item, at) =>
        readWeighted(list, item, at, (choice, place) => readNumber(list, choice, place, range)),
      );
      return choices && { kind, choices };
    }
  }
  return kind satisfies never;
}

export const CHOICES = { least: 1, most: MOST_CHOICES, of: 'choices' } as const;

/** One choice with its weight. */
export function readWeighted<Value>(
  list: ProblemList,
  item: unknown,
  path: string,
  readValue: (value: unknown, path: string) => Value | undefined,
): Choice<Value> | undefined {
  const fields = readFields(list, item, path, ['value', 'weight']);
  if (fields === undefined) return undefined;
  const value = readValue(fields.value, `${path}.value`);
  const weight = readNumber(list, fields.weight, `${path}.weight`, WEIGHT);
  return value === undefined || weight === undefined ? undefined : { value, weight };
}

function kindOf(list: ProblemList, value: unknown, path: string): Distribution['kind'] | undefined {
  if (typeof value !== 'object' || value === null || Array.isArray(value))
    return report(list, 'wrong-type', { path, expected: 'a number or an object with a kind', came: describe(value) });
  const kind = Object.hasOwn(value, 'kind') && 'kind' in value ? value.kind : undefined;
  if (kind === undefined)
    return report(list, 'missing-field', { path: `${path}.kind`, expected: 'a value', came: 'nothing' });
  return readChoice(list, kind, `${path}.kind`, DISTRIBUTION_KINDS);
}

export function rangeOf(input: CampaignInput): NumberRange {
  const { low, high, unit } = INPUT_FACTS[input];
  return { least: low, most: high, unit };
}

/** A deviation or a scale is above 0 and smaller than the whole range. */
export function spreadRange(input: CampaignInput): NumberRange {
  const { low, high, unit } = INPUT_FACTS[input];
  return { least: (high - low) * 1e-12, most: high - low, unit };
}

/** Undefined when any of its numbers was not read. */
function whole<Shape extends object>(
  shape: Shape,
): { [Name in keyof Shape]: Exclude<Shape[Name], undefined> } | undefined {
  const isWhole = (value: Shape): value is Shape & { [Name in keyof Shape]: Exclude<Shape[Name], undefined> } =>
    Object.values(value).every((field) => field !== undefined);
  return isWhole(shape) ? shape : undefined;
}

function inOrder<Shape extends { readonly low: number; readonly high: number }>(
  list: ProblemList,
  path: string,
  shape: Shape | undefined,
): Shape | undefined {
  if (shape === undefined || shape.low < shape.high) return shape;
  return report(list, 'not-in-order', {
    path,
    expected: 'low below high',
    came: `low ${shape.low}, high ${shape.high}`,
  });
}

function keepsEnough(
  list: ProblemList,
  path: string,
  shape: (Distribution & { readonly kind: 'truncated normal' }) | undefined,
): Distribution | undefined {
  if (shape === undefined || shareKept(shape) >= LEAST_SHARE_KEPT) return shape;
  const expected = `bounds that keep at least ${LEAST_SHARE_KEPT} of the normal`;
  return report(list, 'nothing-left', { path, expected, came: `bounds from ${shape.low} to ${shape.high}` });
}

/** Writes down draws that leave the range of the input. */
export function checkReach(
  list: ProblemList,
  path: string,
  input: CampaignInput,
  drawn: { readonly low: number; readonly high: number; readonly kind: string },
): boolean {
  const { low, high, unit } = INPUT_FACTS[input];
  if (drawn.low >= low && drawn.high <= high) return true;
  const hint = drawn.kind === 'normal' ? ' (a truncated normal can be bounded)' : '';
  const expected = `draws from ${low} to ${high}${unit === '-' ? '' : ` [${unit}]`}${hint}`;
  report(list, 'draws-out-of-range', {
    path,
    expected,
    came: `a ${drawn.kind} that reaches from ${short(drawn.low)} to ${short(drawn.high)}`,
  });
  return false;
}

function short(value: number): string {
  return value.toPrecision(4);
}
