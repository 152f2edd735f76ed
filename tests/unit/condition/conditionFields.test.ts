import { describe, expect, it } from 'vitest';
import { CHECKED_RANGES, outsideCheckedRange, RANGED_MODELS } from '../../../engine/checks/index.ts';
import {
  CONDITION_FIELDS,
  fieldNamed,
  namesOf,
  rangedField,
  type ConditionField,
  type ConditionName,
} from '../../../engine/condition/index.ts';
import { CAMPAIGN_INPUTS } from '../../../engine/dispersion/index.ts';

const conditions = Object.entries(CONDITION_FIELDS) as readonly (readonly [ConditionName, ConditionField])[];

describe('the fields of a touchdown', () => {
  it.each(conditions)('describe %s whole: words, a unit, a range with its fallback inside', (name, field) => {
    const { words, meaning, unit, least, most, fallback = least } = field;
    for (const text of [words, meaning, unit]) expect(text).not.toBe('');
    expect(least).toBeLessThan(most);
    expect(fallback >= least && fallback <= most).toBe(true);
    // a name that ends in a unit is in that unit
    expect(name.endsWith('Deg')).toBe(unit === 'deg');
    expect(name.endsWith('DegPerSecond')).toBe(unit === 'deg/s');
  });

  it('have each one name, and among the inputs of a campaign no name that is no input', () => {
    const names = conditions.flatMap(([name]) => namesOf(name));
    expect(new Set(names).size).toBe(names.length);
    const aliases = names.filter((name) => !(name in CONDITION_FIELDS));
    expect(aliases.length).toBeGreaterThan(2);
    expect(aliases.filter((name) => !CAMPAIGN_INPUTS.some((input) => input === name))).toEqual([]);
  });

  it('hold every input of a campaign', () => {
    const names = conditions.flatMap(([name]) => namesOf(name));
    expect(CAMPAIGN_INPUTS.filter((input) => !names.includes(input))).toEqual([]);
  });

  it.each(RANGED_MODELS)('[CK7] hold every field that has a checked range in %s, with its words and unit', (model) => {
    for (const { fields, words, unit } of CHECKED_RANGES[model]) {
      for (const field of fields) expect(fieldNamed(field), field).toBeDefined();
      expect({ words, unit }).toEqual({ words: rangedField(fields[0]!).words, unit: rangedField(fields[0]!).unit });
    }
  });
});

describe('a distribution beyond the checked range', () => {
  it.each([
    ['a mean with its deviations', { mean: 3, deviation: 0.5 }],
    [
      'one choice among others',
      {
        kind: 'discrete',
        choices: [
          { value: 1, weight: 9 },
          { value: 4.5, weight: 1 },
        ],
      },
    ],
  ])('[CK7] is named: %s', (_, descentRate) => {
    expect(outsideCheckedRange('touchdown simulation', { descentRate })).toEqual([
      'descent rate 4.5 m/s, checked from 0 to 3.05',
    ]);
  });
});
