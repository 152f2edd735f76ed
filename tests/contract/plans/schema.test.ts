import { Ajv } from 'ajv';
import { describe, expect, it } from 'vitest';
import { formatProblem } from '../../../engine/result.ts';
import { FLIGHT_MODES, PACES, SENSOR_TROUBLES } from '../../../engine/table/index.ts';
import { WORLDS } from '../../../engine/worlds.ts';
import { LANDERS, parsePlanChoice, SITES, STARTS } from '../../../levels/index.ts';
import { choiceOf } from '../../support/planChoice.ts';
import { readSource } from '../../support/sources.ts';

const schema = JSON.parse(readSource('levels/schemas/plan.schema.json')) as object;
const fits = new Ajv({ allErrors: true, strict: true }).compile(schema);

function problems(json: unknown): readonly string[] {
  const parsed = parsePlanChoice(json);
  return parsed.ok ? [] : parsed.error.map(formatProblem);
}

const ids = (named: readonly { readonly id: string }[]) => named.map(({ id }) => id);
const EVERY_WORD = [
  ['lander', ids(LANDERS)],
  ['site', ids(SITES)],
  ['world', ids(WORLDS)],
  ['start', ids(STARTS)],
  ['mode', FLIGHT_MODES],
  ['pace', PACES],
  ['sensorTrouble', SENSOR_TROUBLES],
  ['seed', [0, 1, Number.MAX_SAFE_INTEGER]],
] as const;

describe('the format of a choice', () => {
  it.each(EVERY_WORD)('[LE6] takes every %s that there is, in the parser as in the schema', (field, words) => {
    expect(words.length).toBeGreaterThan(1);
    for (const word of words) {
      const json: unknown = JSON.parse(JSON.stringify({ ...choiceOf({}), [field]: word }));
      expect(fits(json), `${field} ${word}: ${JSON.stringify(fits.errors)}`).toBe(true);
      expect(parsePlanChoice(json)).toEqual({ ok: true, value: json });
    }
  });

  it.each([
    { spoil: { format: 'kilter-plan/0' }, says: 'format: expected one of "kilter-plan/1"' },
    { spoil: { lander: 'tripet' }, says: 'did you mean "trivet"?), got text "tripet"' },
    { spoil: { site: 'nowhere' }, says: 'site: expected one of "saddlers-bench"' },
    { spoil: { world: 'Moon' }, says: 'world: expected one of "moon"' },
    { spoil: { seed: 1.5 }, says: 'seed: expected a whole number from 0' },
    { spoil: { seed: -1 }, says: 'seed: expected a whole number from 0' },
    { spoil: { seed: '1' }, says: 'got text "1"' },
    { spoil: { start: 'highest' }, says: 'start: expected one of "far", "high", "middle", "low"' },
    { spoil: { mode: 'by mouth' }, says: 'mode: expected one of "by hand", "by orders"' },
    { spoil: { pace: 2 }, says: 'pace: expected one of 1, 0.5, 0.25, got 2' },
    { spoil: { pace: '1' }, says: 'pace: expected one of 1, 0.5, 0.25, got text "1"' },
    {
      spoil: { sensorTrouble: true },
      says: 'sensorTrouble: expected one of "none", "seeded", "engine", "legs", got true',
    },
    { spoil: { weather: 'fine' }, says: 'weather' },
    { spoil: { world: undefined }, says: 'world: expected a value, got nothing' },
  ])('[LE6] refuses $spoil and says where, what was expected and what came', ({ spoil, says }) => {
    const json = { ...choiceOf({}), ...spoil };
    expect(fits(json)).toBe(false);
    expect(problems(json).join('\n')).toContain(says);
    expect(problems(json)).toHaveLength(1);
  });

  it('[LE6] names everything that is wrong at once', () => {
    const wrong = problems({ ...choiceOf({}), lander: 'x', site: 'y', seed: -1, pace: 3 });
    expect(wrong.map((line) => line.split(':')[0])).toEqual(['lander', 'site', 'seed', 'pace']);
    expect(problems(undefined)).toEqual(['document: expected an object, got nothing']);
  });
});
