import {
  createProblemList,
  describe,
  isFull,
  isPlainObject,
  readChoice,
  readFields,
  readNumber,
  readText,
  report,
  type ProblemList,
} from '../fieldReader.ts';
import { accept, refuse, type FieldProblem, type Result } from '../result.ts';
import { STAGES } from '../table/index.ts';
import { PHASES, PHYSICS_REVISION, TICK_RATE } from '../world/index.ts';
import { readChoiceOfPlan } from './readChoiceOfPlan.ts';
import { MEMBER } from './readCommand.ts';
import { readContent } from './readEntry.ts';
import { RECORD_FORMAT, type RecordedPlan, type RecordHeader, type RecordLine, type TableRecord } from './record.ts';

/** Longest record that is read [ticks]: a day. */
const MOST_TICKS = 24 * 3600 * TICK_RATE;
/** Most text that is read, in UTF-16 code units: some 100,000 entries and marks. */
const MOST_TEXT = 32 * 1024 * 1024;

const HASH = { least: 16, most: 16, pattern: /^[0-9a-f]*$/, words: '0 to 9 and a to f' };
const CAUTION_TEXT = { least: 1, most: 400, pattern: /\S/, words: 'a sentence' };
const TICK = { least: 0, most: MOST_TICKS, unit: 'ticks', whole: true };
const ANY = { least: -Number.MAX_VALUE, most: Number.MAX_VALUE, unit: '-' };

/** Text of a record: JSON Lines, the header first. */
export function formatRecord({ header, lines }: TableRecord): string {
  return [header, ...lines].map((line) => `${JSON.stringify(line)}\n`).join('');
}

/** A record that replays under this very physics, or what is wrong with the text. Paths start with the number of the line. */
export function parseRecord(text: string): Result<TableRecord, readonly FieldProblem[]> {
  const list = createProblemList('record');
  const record = readRecord(list, text);
  return record === undefined || list.problems.length > 0 ? refuse(list.problems) : accept(record);
}

function readRecord(list: ProblemList, text: string): TableRecord | undefined {
  if (text.length > MOST_TEXT) {
    const expected = `at most ${MOST_TEXT} characters`;
    return report(list, 'too-large', { path: '', expected, came: `${text.length}` });
  }
  const [first = '', ...rest] = text.split('\n');
  const header = readHeader(list, readJson(list, first, 'line 1'));
  // of another version nothing else can be read truly
  if (header === undefined) return undefined;
  const lines: RecordLine[] = [];
  for (const [index, line] of rest.entries()) {
    if (isFull(list)) return undefined;
    if (line.trim() === '') continue;
    const path = `line ${index + 2}`;
    const value = readJson(list, line, path);
    if (isSample(value)) continue;
    const read = readLine(list, value, path);
    if (read !== undefined) lines.push(read);
    checkOrder(list, lines, path);
  }
  return { header, lines };
}

/** Samples stand in an exported record for readers without this engine. Replaying gives them anew, so they are read past. */
function isSample(value: unknown): boolean {
  return isPlainObject(value) && value['line'] === 'sample';
}

function readJson(list: ProblemList, text: string, path: string): unknown {
  try {
    return JSON.parse(text);
  } catch {
    return report(list, 'not-json', { path, expected: 'one JSON value', came: describe(text) });
  }
}

/** Ticks never go back. */
function checkOrder(list: ProblemList, lines: readonly RecordLine[], path: string): void {
  const [before, last] = [lines.at(-2)?.tick ?? 0, lines.at(-1)?.tick ?? 0];
  if (last < before)
    report(list, 'out-of-order', { path: `${path}.tick`, expected: `${before} or later`, came: `${last}` });
}

function readHeader(list: ProblemList, value: unknown): RecordHeader | undefined {
  if (value === undefined) return undefined;
  const path = 'line 1';
  const fields = readFields(list, value, path, ['format', 'caution', 'physics', 'tickRate', 'plan']);
  if (fields === undefined) return undefined;
  const fixed = { format: RECORD_FORMAT, physics: PHYSICS_REVISION, tickRate: TICK_RATE } as const;
  for (const name of ['format', 'physics', 'tickRate'] as const) {
    if (fields[name] === fixed[name] || fields[name] === undefined) continue;
    const expected = JSON.stringify(fixed[name]);
    return report(list, 'other-version', { path: `${path}.${name}`, expected, came: describe(fields[name]) });
  }
  const plan = readPlan(list, fields.plan, `${path}.plan`);
  const caution = readText(list, fields.caution, `${path}.caution`, CAUTION_TEXT);
  return plan === undefined || caution === undefined ? undefined : { ...fixed, caution, plan };
}

function readPlan(list: ProblemList, value: unknown, path: string): RecordedPlan | undefined {
  if (value === undefined) return undefined;
  const fields = readFields(list, value, path, ['choice', 'setupHash'], ['drill']);
  const choice = readChoiceOfPlan(list, fields?.choice, `${path}.choice`);
  const setupHash = readText(list, fields?.setupHash, `${path}.setupHash`, HASH);
  const drill = fields?.drill;
  if (choice === undefined || setupHash === undefined) return undefined;
  const isGiven = choice.drill === undefined ? drill === undefined : isPlainObject(drill);
  if (!isGiven)
    return report(list, 'drill', {
      path: `${path}.drill`,
      expected: choice.drill === undefined ? 'none: the choice names no drill' : `the drill ${choice.drill}`,
      came: describe(drill),
    });
  return { choice, setupHash, ...(drill !== undefined && { drill }) };
}

function readLine(list: ProblemList, value: unknown, path: string): RecordLine | undefined {
  if (value === undefined) return undefined;
  const isMark = typeof value === 'object' && value !== null && 'line' in value && value.line === 'mark';
  return isMark ? readMark(list, value, path) : readEntry(list, value, path);
}

function readEntry(list: ProblemList, value: unknown, path: string): RecordLine | undefined {
  const fields = readFields(list, value, path, ['line', 'tick', 'member', 'content']);
  const line = readChoice(list, fields?.line, `${path}.line`, ['entry', 'mark']);
  const tick = readNumber(list, fields?.tick, `${path}.tick`, TICK);
  const member = readText(list, fields?.member, `${path}.member`, MEMBER);
  const content = readContent(list, fields?.content, `${path}.content`);
  if (line === undefined || tick === undefined || member === undefined || content === undefined) return undefined;
  return { line: 'entry', tick, member, content };
}

const NUMBERS = ['x', 'y', 'angle', 'vx', 'vy', 'rate', 'thrust', 'propellant'] as const;
const HASHES = ['legs', 'contacts', 'hull', 'belief', 'table', 'hash'] as const;

function readMark(list: ProblemList, value: unknown, path: string): RecordLine | undefined {
  const fields = readFields(list, value, path, ['line', 'tick', 'stage', 'phase', ...NUMBERS, ...HASHES]);
  const tick = readNumber(list, fields?.tick, `${path}.tick`, TICK);
  const stage = readChoice(list, fields?.stage, `${path}.stage`, STAGES);
  const phase = readChoice(list, fields?.phase, `${path}.phase`, PHASES);
  const number = (name: (typeof NUMBERS)[number]) => readNumber(list, fields?.[name], `${path}.${name}`, ANY);
  const [x, y, angle, vx] = [number('x'), number('y'), number('angle'), number('vx')];
  const [vy, rate, thrust, propellant] = [number('vy'), number('rate'), number('thrust'), number('propellant')];
  const hashOf = (name: (typeof HASHES)[number]) => readText(list, fields?.[name], `${path}.${name}`, HASH);
  const [legs, contacts, hull] = [hashOf('legs'), hashOf('contacts'), hashOf('hull')];
  const [table, hash] = [hashOf('table'), hashOf('hash')];
  const belief = hashOf('belief');
  if (tick === undefined || stage === undefined || phase === undefined) return undefined;
  if (x === undefined || y === undefined || angle === undefined || vx === undefined) return undefined;
  if (vy === undefined || rate === undefined || thrust === undefined || propellant === undefined) return undefined;
  if (legs === undefined || contacts === undefined || hull === undefined) return undefined;
  if (belief === undefined || table === undefined || hash === undefined) return undefined;
  const motion = { x, y, angle, vx, vy, rate, thrust, propellant };
  return { line: 'mark', tick, stage, phase, ...motion, legs, contacts, hull, belief, table, hash };
}
