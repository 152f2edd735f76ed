import { DRILL_FORMAT, type Drill } from '../../engine/drill/index.ts';
import {
  createProblemList,
  describe,
  readChoice,
  readFields,
  readList,
  readNumber,
  readText,
  report,
  type ProblemList,
} from '../../engine/fieldReader.ts';
import { accept, refuse, type FieldProblem, type Result } from '../../engine/result.ts';
import { FLIGHT_MODES, PACES } from '../../engine/table/index.ts';
import { WORLDS } from '../../engine/worlds.ts';
import { LANDERS } from '../landers.ts';
import { STARTS } from '../plans/findStart.ts';
import { SITES } from '../sites/findSite.ts';
import { checkDrill } from './checkDrill.ts';
import { COUNTS, RANGES, TEXTS } from './drillRanges.ts';
import { readNamedFault } from './readEffect.ts';
import { readEvent } from './readEvent.ts';
import { readRule } from './readRule.ts';

const FIELDS = [
  'format',
  'id',
  'title',
  'summary',
  'level',
  'minutes',
  'brief',
  'objectives',
  'ruleCard',
  'plan',
  'profile',
  'truth',
  'courses',
  'events',
  'questions',
] as const;

/** The drill that a parsed JSON document describes, or everything that is wrong with it. */
export function parseDrill(json: unknown): Result<Drill, readonly FieldProblem[]> {
  const list = createProblemList('drill');
  const drill = readDrill(list, json);
  if (drill !== undefined && list.problems.length === 0) checkDrill(list, drill);
  return drill === undefined || list.problems.length > 0 ? refuse(list.problems) : accept(drill);
}

function readDrill(list: ProblemList, json: unknown): Drill | undefined {
  const fields = readFields(list, json, '', FIELDS);
  if (fields === undefined) return undefined;
  if (fields.format !== DRILL_FORMAT && fields.format !== undefined) {
    const expected = JSON.stringify(DRILL_FORMAT);
    return report(list, 'unknown-format', { path: 'format', expected, came: describe(fields.format) });
  }
  const id = readText(list, fields.id, 'id', TEXTS.id);
  const title = readText(list, fields.title, 'title', TEXTS.title);
  const summary = readText(list, fields.summary, 'summary', TEXTS.sentence);
  const level = readNumber(list, fields.level, 'level', RANGES.level);
  const minutes = readNumber(list, fields.minutes, 'minutes', RANGES.minutes);
  const brief = readList(list, fields.brief, 'brief', COUNTS.paragraphs, (item, path) =>
    readText(list, item, path, TEXTS.paragraph),
  );
  const objectives = readList(list, fields.objectives, 'objectives', COUNTS.objectives, readSaid);
  const ruleCard = readList(list, fields.ruleCard, 'ruleCard', COUNTS.rules, (item, path) =>
    readRule(list, item, path),
  );
  const plan = readPlan(list, fields.plan, 'plan');
  const profile = readList(list, fields.profile, 'profile', COUNTS.rates, (item, path) => readRate(list, item, path));
  const truth = readTruth(list, fields.truth, 'truth');
  const courses = readCourses(list, fields.courses, 'courses');
  const events = readList(list, fields.events, 'events', COUNTS.events, (item, path) => readEvent(list, item, path));
  const questions = readList(list, fields.questions, 'questions', COUNTS.questions, readQuestion);
  if (id === undefined || title === undefined || summary === undefined) return undefined;
  if (level === undefined || minutes === undefined || brief === undefined) return undefined;
  if (objectives === undefined || ruleCard === undefined || plan === undefined) return undefined;
  if (profile === undefined) return undefined;
  if (truth === undefined || courses === undefined || events === undefined) return undefined;
  if (questions === undefined) return undefined;
  const head = { format: DRILL_FORMAT, id, title, summary, level, minutes } as const;
  return { ...head, brief, objectives, ruleCard, plan, profile, truth, courses, events, questions };

  function readSaid(value: unknown, path: string): { readonly id: string; readonly text: string } | undefined {
    const said = readFields(list, value, path, ['id', 'text']);
    const saidId = readText(list, said?.id, `${path}.id`, TEXTS.id);
    const text = readText(list, said?.text, `${path}.text`, TEXTS.sentence);
    return saidId === undefined || text === undefined ? undefined : { id: saidId, text };
  }

  function readQuestion(value: unknown, path: string): Drill['questions'][number] | undefined {
    const asked = readFields(list, value, path, ['objective', 'text']);
    const objective = readText(list, asked?.objective, `${path}.objective`, TEXTS.id);
    const text = readText(list, asked?.text, `${path}.text`, TEXTS.sentence);
    return objective === undefined || text === undefined ? undefined : { objective, text };
  }
}

function readPlan(list: ProblemList, value: unknown, path: string): Drill['plan'] | undefined {
  if (value === undefined) return undefined;
  const fields = readFields(list, value, path, ['lander', 'site', 'world', 'start', 'mode', 'pace', 'seed']);
  const lander = readChoice(list, fields?.lander, `${path}.lander`, idsOf(LANDERS));
  const site = readChoice(list, fields?.site, `${path}.site`, idsOf(SITES));
  const world = readChoice(list, fields?.world, `${path}.world`, idsOf(WORLDS));
  const start = readChoice(list, fields?.start, `${path}.start`, idsOf(STARTS));
  const mode = readChoice(list, fields?.mode, `${path}.mode`, FLIGHT_MODES);
  const pace = readChoice(list, fields?.pace, `${path}.pace`, PACES);
  const seed = readNumber(list, fields?.seed, `${path}.seed`, RANGES.seed);
  if (lander === undefined || site === undefined || world === undefined || start === undefined) return undefined;
  if (mode === undefined || pace === undefined || seed === undefined) return undefined;
  return { lander, site, world, start, mode, pace, seed };
}

function readTruth(list: ProblemList, value: unknown, path: string): Drill['truth'] | undefined {
  if (value === undefined) return undefined;
  const fields = readFields(list, value, path, ['steeperDeg', 'faults']);
  const steeperDeg = readNumber(list, fields?.steeperDeg, `${path}.steeperDeg`, RANGES.steeperDeg);
  const faults = readList(list, fields?.faults, `${path}.faults`, COUNTS.faults, (item, itemPath) =>
    readNamedFault(list, item, itemPath),
  );
  return steeperDeg === undefined || faults === undefined ? undefined : { steeperDeg, faults };
}

function readRate(list: ProblemList, value: unknown, path: string): Drill['profile'][number] | undefined {
  const fields = readFields(list, value, path, ['above', 'rate']);
  const above = readNumber(list, fields?.above, `${path}.above`, RANGES.meters);
  const rate = readNumber(list, fields?.rate, `${path}.rate`, RANGES.rate);
  return above === undefined || rate === undefined ? undefined : { above, rate };
}

/** None, or at least two: one alone would be no choice. */
function readCourses(list: ProblemList, value: unknown, path: string): readonly string[] | undefined {
  if (Array.isArray(value) && value.length === 0) return [];
  return readList(list, value, path, COUNTS.courses, (item, itemPath) => readText(list, item, itemPath, TEXTS.id));
}

function idsOf(named: readonly { readonly id: string }[]): readonly string[] {
  return named.map(({ id }) => id);
}
