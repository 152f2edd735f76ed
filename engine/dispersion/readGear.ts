/** Reads the states of the landing gear of a campaign document and their chances. */
import { CONDITION_FIELDS } from '../condition/index.ts';
import {
  readChoice,
  readFields,
  readList,
  readNumber,
  report,
  type NumberRange,
  type ProblemList,
} from '../fieldReader.ts';
import type { LegCondition } from '../touchdown/touchdownCase.ts';
import type { GearChoices } from './campaignInputs.ts';
import { CHOICES, readWeighted } from './readDistribution.ts';

const CONDITIONS = ['missing', 'soft', 'not latched'] as const satisfies readonly LegCondition['kind'][];
/** Of a soft leg or of one that is not latched. */
const FACTOR: NumberRange = { ...CONDITION_FIELDS.softFactor, least: CONDITION_FIELDS.unlatchedFactor.least };

/** `legs`: the range of leg numbers in the document, which count from 1. Undefined also where there is nothing to read. */
export function readGear(list: ProblemList, value: unknown, path: string, legs: NumberRange): GearChoices | undefined {
  return readList(list, value, path, CHOICES, (item, at) =>
    readWeighted(list, item, at, (state, place) => readConditions(list, state, place, legs)),
  );
}

function readConditions(
  list: ProblemList,
  value: unknown,
  path: string,
  legs: NumberRange,
): readonly LegCondition[] | undefined {
  const rule = { least: 0, most: legs.most, of: 'leg conditions, none for sound gear' };
  const conditions = readList(list, value, path, rule, (item, at) => readCondition(list, item, at, legs));
  const numbers = conditions?.map((condition) => condition.leg) ?? [];
  const isTwice = new Set(numbers).size < numbers.length;
  if (isTwice)
    return report(list, 'given-twice', {
      path,
      expected: 'one condition a leg',
      came: `legs ${numbers.map((leg) => leg + 1).join(', ')}`,
    });
  return conditions;
}

function readCondition(list: ProblemList, value: unknown, path: string, legs: NumberRange): LegCondition | undefined {
  const fields = readFields(list, value, path, ['leg', 'kind'], ['factor']);
  if (fields === undefined) return undefined;
  const number = readNumber(list, fields.leg, `${path}.leg`, legs);
  const kind = readChoice(list, fields.kind, `${path}.kind`, CONDITIONS);
  const factor = readNumber(list, fields.factor, `${path}.factor`, FACTOR);
  if (number === undefined || kind === undefined) return undefined;
  const leg = number - 1;
  const hasFactor = fields.factor !== undefined;
  if (kind === 'missing' && hasFactor)
    return report(list, 'unknown-field', {
      path: `${path}.factor`,
      expected: 'no factor of a missing leg',
      came: `${factor}`,
    });
  if (kind === 'missing') return { leg, kind };
  if (hasFactor && factor === undefined) return undefined;
  if (kind === 'not latched') return { leg, kind, ...(factor !== undefined && { factor }) };
  if (factor === undefined)
    return report(list, 'missing-field', { path: `${path}.factor`, expected: 'a value', came: 'nothing' });
  return { leg, kind, factor };
}
