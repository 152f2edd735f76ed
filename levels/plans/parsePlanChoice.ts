import { createProblemList, readChoice, readFields, readNumber, readText } from '../../engine/fieldReader.ts';
import type { Fields, ProblemList } from '../../engine/fieldReader.ts';
import { accept, refuse, type FieldProblem, type Result } from '../../engine/result.ts';
import { FLIGHT_MODES, PACES, PLAN_FORMAT, SENSOR_TROUBLES, type PlanChoice } from '../../engine/table/index.ts';
import { WORLDS } from '../../engine/worlds.ts';
import { DRILL_ID } from '../drills/drillRanges.ts';
import { LANDERS } from '../landers.ts';
import { SITES } from '../sites/findSite.ts';
import { STARTS } from './findStart.ts';

const FIELDS = ['format', 'lander', 'site', 'world', 'seed', 'start', 'mode', 'pace', 'sensorTrouble'] as const;
const SEED = { least: 0, most: Number.MAX_SAFE_INTEGER, unit: '-', whole: true };

/** The choice that a parsed JSON document makes, or everything that is wrong with it. Whether it can be flown is `layPlan`'s to say. */
export function parsePlanChoice(json: unknown): Result<PlanChoice, readonly FieldProblem[]> {
  const list = createProblemList('plan');
  const fields = readFields(list, json, '', FIELDS, ['drill']);
  const choice = fields === undefined ? undefined : readPlan(list, fields);
  return choice === undefined || list.problems.length > 0 ? refuse(list.problems) : accept(choice);
}

function readPlan(list: ProblemList, fields: Fields<(typeof FIELDS)[number] | 'drill'>): PlanChoice | undefined {
  const format = readChoice(list, fields.format, 'format', [PLAN_FORMAT]);
  const lander = readChoice(list, fields.lander, 'lander', idsOf(LANDERS));
  const site = readChoice(list, fields.site, 'site', idsOf(SITES));
  const world = readChoice(list, fields.world, 'world', idsOf(WORLDS));
  const seed = readNumber(list, fields.seed, 'seed', SEED);
  const start = readChoice(list, fields.start, 'start', idsOf(STARTS));
  const mode = readChoice(list, fields.mode, 'mode', FLIGHT_MODES);
  const pace = readChoice(list, fields.pace, 'pace', PACES);
  const sensorTrouble = readChoice(list, fields.sensorTrouble, 'sensorTrouble', SENSOR_TROUBLES);
  const drill = readText(list, fields.drill, 'drill', DRILL_ID);
  if (format === undefined || lander === undefined || site === undefined || world === undefined) return undefined;
  if (seed === undefined || start === undefined || mode === undefined) return undefined;
  if (pace === undefined || sensorTrouble === undefined) return undefined;
  const plan = { format, lander, site, world, seed, start, mode, pace, sensorTrouble };
  return drill === undefined ? plan : { ...plan, drill };
}

function idsOf(named: readonly { readonly id: string }[]): readonly string[] {
  return named.map(({ id }) => id);
}
