import { parseDocumentText } from '../../engine/documentText.ts';
import {
  createProblemList,
  readChoice,
  readFields,
  readKind,
  readList,
  readNumber,
  readText,
  readTruth,
  type ProblemList,
} from '../../engine/fieldReader.ts';
import { withLines } from '../../engine/lineOfPath.ts';
import { accept, refuse, type FieldProblem, type Result } from '../../engine/result.ts';
import { DEFAULT_FRICTION, reshape, SHAPE_FACTS, SHAPE_FIELDS, type ShapeField } from '../../engine/study/index.ts';
import { WORLDS } from '../../engine/worlds.ts';
import { findLander, LANDERS } from '../landers.ts';
import type { DialScene, FilmScene, Hall, HallScene } from './hall.ts';
import { LINE, RANGES } from './ranges.ts';
import { readArrival } from './readArrival.ts';
import { readFlight } from './readFlight.ts';

const HALL_FORMAT = 'kilter-hall/1';

export const HALL_BUDGET = { mostBytes: 64 * 1024, deepest: 8 } as const;

const PACE = { least: 0.05, most: 10, unit: '-' } as const;

/** The scenes that the text of a file holds. Whoever writes one by hand is told the line of each problem. */
export function parseHallText(text: string): Result<Hall, readonly FieldProblem[]> {
  const json = parseDocumentText(createProblemList('hall'), text, HALL_BUDGET);
  const hall = json.ok ? parseHall(json.value) : json;
  return hall.ok || !json.ok ? hall : refuse(withLines(text, hall.error));
}

/** The scenes of a parsed JSON document, or everything that is wrong with it. */
export function parseHall(json: unknown): Result<Hall, readonly FieldProblem[]> {
  const list = createProblemList('hall');
  const fields = readFields(list, json, '', ['format', 'title', 'scenes']);
  readChoice(list, fields?.format, 'format', [HALL_FORMAT]);
  const title = readText(list, fields?.title, 'title', LINE);
  const rule = { least: 1, most: 40, of: 'scenes' };
  const scenes = readList(list, fields?.scenes, 'scenes', rule, (item, path) => readScene(list, item, path));
  if (title === undefined || scenes === undefined || list.problems.length > 0) return refuse(list.problems);
  return accept({ title, scenes });
}

function readScene(list: ProblemList, value: unknown, path: string): HallScene | undefined {
  const kind = readKind(list, value, path, ['film', 'dial', 'flight']);
  return kind === undefined ? undefined : READ[kind](list, value, path);
}

const READ = { film: readFilm, dial: readDial, flight: readFlight } as const;

function readFilm(list: ProblemList, value: unknown, path: string): FilmScene | undefined {
  const names = ['kind', 'question', 'answer', 'vote', 'pace', 'arrivals'] as const;
  const fields = readFields(list, value, path, names);
  const question = readText(list, fields?.question, `${path}.question`, LINE);
  const answer = readText(list, fields?.answer, `${path}.answer`, LINE);
  const isVote = readTruth(list, fields?.vote, `${path}.vote`);
  const pace = readNumber(list, fields?.pace, `${path}.pace`, PACE);
  const rule = { least: 2, most: 3, of: 'arrivals' };
  const arrivals = readList(list, fields?.arrivals, `${path}.arrivals`, rule, (item, at) =>
    readArrival(list, item, at),
  );
  if (question === undefined || answer === undefined || isVote === undefined) return undefined;
  if (pace === undefined || arrivals === undefined) return undefined;
  return { kind: 'film', question, answer, isVote, pace, arrivals };
}

const DIAL_FIELDS = [
  'kind',
  'question',
  'answer',
  'field',
  'from',
  'to',
  'step',
  'lander',
  'worlds',
  'slopeDeg',
  'descentRate',
] as const;

function readDial(list: ProblemList, value: unknown, path: string): DialScene | undefined {
  const fields = readFields(list, value, path, DIAL_FIELDS, ['friction']);
  if (fields === undefined) return undefined;
  const at = (name: string) => `${path}.${name}`;
  const { friction: grip = DEFAULT_FRICTION } = fields;
  const question = readText(list, fields.question, at('question'), LINE);
  const answer = readText(list, fields.answer, at('answer'), LINE);
  const ranged = readRange(list, fields, path);
  const id = readChoice(
    list,
    fields.lander,
    at('lander'),
    LANDERS.map((one) => one.id),
  );
  const lander = id === undefined ? undefined : findLander(id);
  const rule = { least: 1, most: 3, of: 'worlds' };
  const ids = WORLDS.map((world) => world.id);
  const worlds = readList(list, fields.worlds, at('worlds'), rule, (item, where) => readChoice(list, item, where, ids));
  const slopeDeg = readNumber(list, fields.slopeDeg, at('slopeDeg'), RANGES.slopeDeg);
  const descentRate = readNumber(list, fields.descentRate, at('descentRate'), RANGES.descentRate);
  const friction = readNumber(list, grip, at('friction'), RANGES.friction);
  if (question === undefined || answer === undefined || ranged === undefined || lander === undefined) return undefined;
  if (worlds === undefined || slopeDeg === undefined || descentRate === undefined || friction === undefined)
    return undefined;
  // both ends are landers, so that a presenter finds out at home
  for (const end of ['from', 'to'] as const) {
    const shaped = reshape(lander, { [ranged.field]: ranged[end] });
    if (!shaped.ok) list.problems.push(...shaped.error.slice(0, 1).map((problem) => ({ ...problem, path: at(end) })));
  }
  return { kind: 'dial', question, answer, ...ranged, lander, worlds, slopeDeg, descentRate, friction };
}

function readRange(
  list: ProblemList,
  fields: { readonly field?: unknown; readonly from?: unknown; readonly to?: unknown; readonly step?: unknown },
  path: string,
): Pick<DialScene, 'field' | 'from' | 'to' | 'step'> | undefined {
  const field: ShapeField | undefined = readChoice(list, fields.field, `${path}.field`, SHAPE_FIELDS);
  if (field === undefined) return undefined;
  const facts = SHAPE_FACTS[field];
  const from = readNumber(list, fields.from, `${path}.from`, facts);
  if (from === undefined) return undefined;
  const to = readNumber(list, fields.to, `${path}.to`, { ...facts, least: from });
  if (to === undefined) return undefined;
  const span = to - from;
  const step = readNumber(list, fields.step, `${path}.step`, { least: span / 1000, most: span, unit: facts.unit });
  return step === undefined ? undefined : { field, from, to, step };
}
