import { readChoice, readFields, readNumber, readText, type ProblemList } from '../fieldReader.ts';
import { FLIGHT_MODES, PACES, PLAN_FORMAT, SENSOR_TROUBLES, type PlanChoice } from '../table/index.ts';

const ID = { least: 1, most: 32, pattern: /^[a-z][a-z0-9-]*$/, words: 'a to z first, then a to z, 0 to 9 and -' };
const SEED = { least: 0, most: Number.MAX_SAFE_INTEGER, unit: '-', whole: true };
const FIELDS = ['format', 'lander', 'site', 'world', 'seed', 'start', 'mode', 'pace', 'sensorTrouble'] as const;

/** The shape of a choice. What its identifiers name is for whoever lays it out. */
export function readChoiceOfPlan(list: ProblemList, value: unknown, path: string): PlanChoice | undefined {
  if (value === undefined) return undefined;
  const fields = readFields(list, value, path, FIELDS, ['drill']);
  const id = (name: 'lander' | 'site' | 'world' | 'start' | 'drill') =>
    readText(list, fields?.[name], `${path}.${name}`, ID);
  const [lander, site, world, start] = [id('lander'), id('site'), id('world'), id('start')];
  const drill = id('drill');
  const format = readChoice(list, fields?.format, `${path}.format`, [PLAN_FORMAT]);
  const seed = readNumber(list, fields?.seed, `${path}.seed`, SEED);
  const mode = readChoice(list, fields?.mode, `${path}.mode`, FLIGHT_MODES);
  const sensorTrouble = readChoice(list, fields?.sensorTrouble, `${path}.sensorTrouble`, SENSOR_TROUBLES);
  const pace = readChoice(list, fields?.pace, `${path}.pace`, PACES);
  if (format === undefined || lander === undefined || site === undefined || world === undefined) return undefined;
  if (seed === undefined || start === undefined || mode === undefined) return undefined;
  if (pace === undefined || sensorTrouble === undefined) return undefined;
  const plan = { format, lander, site, world, seed, start, mode, pace, sensorTrouble };
  return drill === undefined ? plan : { ...plan, drill };
}
