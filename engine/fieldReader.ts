/**
 * Reads foreign data strictly: only what is asked for, in the shape asked for, and everything wrong is written down with
 * its path, what was expected and what it got. A reading is undefined when something was written down for it, or when there was
 * nothing to read: an absent field is written down once, by readFields.
 */
import { nearestName } from './nearestName.ts';
import type { FieldProblem } from './result.ts';

/** At most so many problems are listed; one more says that there are others. */
export const MOST_PROBLEMS = 40;

/** Longest piece of a foreign text or name that is quoted back, in characters. */
const LONGEST_QUOTE = 40;

/** Where a reading writes its problems. Make one for each document. */
export interface ProblemList {
  /** First part of every code, such as 'lander'. */
  readonly area: string;
  readonly problems: FieldProblem[];
}

export function createProblemList(area: string): ProblemList {
  return { area, problems: [] };
}

/** Writes down a problem. The code is a literal such as 'out-of-range', without the area. */
export function report(list: ProblemList, code: string, problem: Omit<FieldProblem, 'code'>): undefined {
  if (isFull(list)) return;
  list.problems.push({ code: `${list.area}/${code}`, ...problem });
  if (list.problems.length < MOST_PROBLEMS) return;
  const expected = `at most ${MOST_PROBLEMS} problems`;
  list.problems.push({ code: `${list.area}/more-problems`, path: '', expected, came: 'more; the rest are not listed' });
}

export function isFull(list: ProblemList): boolean {
  return list.problems.length > MOST_PROBLEMS;
}

/** A foreign value in a few words, never long. */
export function describe(value: unknown): string {
  if (value === undefined) return 'nothing';
  if (value === null) return 'null';
  if (Array.isArray(value)) return `a list of ${value.length}`;
  if (typeof value === 'string') return `text ${quote(value)}`;
  if (typeof value === 'number' || typeof value === 'boolean') return String(value);
  return typeof value === 'object' ? 'an object' : `a ${typeof value}`;
}

function quote(text: string): string {
  return text.length > LONGEST_QUOTE
    ? `${JSON.stringify(text.slice(0, LONGEST_QUOTE))} and more`
    : JSON.stringify(text);
}

/** Path of a field of the object at `path`; a name that is no plain word is quoted. */
export function fieldPath(path: string, name: string): string {
  if (!/^\w{1,40}$/.test(name)) return `${path}[${quote(name)}]`;
  return path === '' ? name : `${path}.${name}`;
}

/** Values by name, still foreign. */
export type Fields<Name extends string> = Readonly<Partial<Record<Name, unknown>>>;

/**
 * The fields of a plain object: all of `names`, and `optional` ones where present (undefined where absent). Any other field
 * is a problem. Values are yet to be read.
 */
export function readFields<Name extends string, Optional extends string = never>(
  list: ProblemList,
  value: unknown,
  path: string,
  names: readonly Name[],
  optional: readonly Optional[] = [],
): Fields<Name | Optional> | undefined {
  if (!isPlainObject(value)) return report(list, 'wrong-type', { path, expected: 'an object', came: describe(value) });
  const legal: readonly string[] = [...names, ...optional];
  for (const name of Object.keys(value)) {
    if (isFull(list)) return undefined;
    if (legal.includes(name)) continue;
    const near = nearestName(name.slice(0, LONGEST_QUOTE), legal);
    const expected = near === undefined ? `one of ${legal.join(', ')}` : `no such field (did you mean ${near}?)`;
    report(list, 'unknown-field', { path: fieldPath(path, name), expected, came: describe(value[name]) });
  }
  // what is there is read all the same, so that its own problems are found in the same pass
  const fields: Partial<Record<Name | Optional, unknown>> = {};
  for (const name of optional) fields[name] = ownValue(value, name);
  for (const name of names) {
    fields[name] = ownValue(value, name);
    if (fields[name] !== undefined) continue;
    report(list, 'missing-field', { path: fieldPath(path, name), expected: 'a value', came: 'nothing' });
  }
  return fields;
}

function ownValue(value: Readonly<Record<string, unknown>>, name: string): unknown {
  return Object.hasOwn(value, name) ? value[name] : undefined;
}

/** The `kind` of an object whose other fields depend on it, or whatever that field is called. */
export function readKind<Kind extends string>(
  list: ProblemList,
  value: unknown,
  path: string,
  kinds: readonly Kind[],
  name = 'kind',
): Kind | undefined {
  if (value === undefined) return undefined;
  if (!isPlainObject(value)) return report(list, 'wrong-type', { path, expected: 'an object', came: describe(value) });
  const kind = ownValue(value, name);
  const kindPath = fieldPath(path, name);
  if (kind === undefined)
    return report(list, 'missing-field', { path: kindPath, expected: `one of ${kinds.join(', ')}`, came: 'nothing' });
  return readChoice(list, kind, kindPath, kinds);
}

export function isPlainObject(value: unknown): value is Readonly<Record<string, unknown>> {
  if (typeof value !== 'object' || value === null || Array.isArray(value)) return false;
  const prototype: unknown = Object.getPrototypeOf(value);
  return prototype === Object.prototype || prototype === null;
}

/** What a number must lie between, both ends included. */
export interface NumberRange {
  readonly least: number;
  readonly most: number;
  /** Such as 'kg'; '-' for a ratio. */
  readonly unit: string;
  readonly whole?: boolean;
}

export function readNumber(list: ProblemList, value: unknown, path: string, range: NumberRange): number | undefined {
  if (value === undefined) return undefined;
  const { least, most, unit, whole = false } = range;
  const expected = `a ${whole ? 'whole ' : ''}number from ${least} to ${most}${unit === '-' ? '' : ` [${unit}]`}`;
  if (typeof value !== 'number') return report(list, 'wrong-type', { path, expected, came: describe(value) });
  if (!Number.isFinite(value)) return report(list, 'not-finite', { path, expected, came: describe(value) });
  const inside = value >= least && value <= most && (!whole || Number.isInteger(value));
  if (!inside) return report(list, 'out-of-range', { path, expected, came: describe(value) });
  // -0 is read as 0
  return value + 0;
}

export interface TextRule {
  readonly least: number;
  readonly most: number;
  /** Whole-text pattern, and what it asks for in words. */
  readonly pattern: RegExp;
  readonly words: string;
}

/** Length counts characters (code points). */
export function readText(list: ProblemList, value: unknown, path: string, rule: TextRule): string | undefined {
  if (value === undefined) return undefined;
  const expected = `${rule.least} to ${rule.most} characters: ${rule.words}`;
  if (typeof value !== 'string') return report(list, 'wrong-type', { path, expected, came: describe(value) });
  const length = value.length > 2 * rule.most ? Infinity : countCharacters(value);
  if (length < rule.least || length > rule.most)
    return report(list, 'wrong-length', { path, expected, came: describe(value) });
  if (!rule.pattern.test(value)) return report(list, 'bad-text', { path, expected, came: describe(value) });
  return value;
}

function countCharacters(text: string): number {
  let count = 0;
  for (const _ of text) count++;
  return count;
}

export function readChoice<Choice extends string | number>(
  list: ProblemList,
  value: unknown,
  path: string,
  choices: readonly Choice[],
): Choice | undefined {
  if (value === undefined) return undefined;
  const found = choices.find((choice) => choice === value);
  if (found !== undefined) return found;
  const named = choices.filter((choice) => typeof choice === 'string');
  const near = typeof value === 'string' ? nearestName(value.slice(0, LONGEST_QUOTE), named) : undefined;
  const hint = near === undefined ? '' : ` (did you mean ${JSON.stringify(near)}?)`;
  const legal = choices.map((choice) => JSON.stringify(choice)).join(', ');
  return report(list, 'not-a-choice', { path, expected: `one of ${legal}${hint}`, came: describe(value) });
}

export function readTruth(list: ProblemList, value: unknown, path: string): boolean | undefined {
  if (value === undefined || typeof value === 'boolean') return value;
  return report(list, 'wrong-type', { path, expected: 'true or false', came: describe(value) });
}

/** A list within a budget of length; a longer one is refused unread. */
export function readList<Item>(
  list: ProblemList,
  value: unknown,
  path: string,
  rule: { readonly least: number; readonly most: number; readonly of: string },
  readItem: (item: unknown, path: string) => Item | undefined,
): readonly Item[] | undefined {
  if (value === undefined) return undefined;
  const count = rule.least === rule.most ? `${rule.least}` : `${rule.least} to ${rule.most}`;
  const expected = `a list of ${count} ${rule.of}`;
  if (!Array.isArray(value)) return report(list, 'wrong-type', { path, expected, came: describe(value) });
  if (value.length < rule.least || value.length > rule.most)
    return report(list, 'wrong-count', { path, expected, came: describe(value) });
  const items: Item[] = [];
  for (let index = 0; index < value.length; index++) {
    const item: unknown = value[index];
    const itemPath = `${path}[${index}]`;
    const read =
      item === undefined
        ? report(list, 'missing-field', { path: itemPath, expected: 'a value', came: 'nothing' })
        : readItem(item, itemPath);
    if (read !== undefined) items.push(read);
  }
  return items.length === value.length ? items : undefined;
}
