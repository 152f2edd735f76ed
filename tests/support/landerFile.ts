import bolster from '../../levels/landers/bolster.json' with { type: 'json' };
import steeple from '../../levels/landers/steeple.json' with { type: 'json' };
import trivet from '../../levels/landers/trivet.json' with { type: 'json' };

/** The example lander files as plain JSON, for tests that spoil a copy of one. */
export const LANDER_FILES: Readonly<Record<'trivet' | 'steeple' | 'bolster', unknown>> = { trivet, steeple, bolster };

export type Step = string | number;

/** Every number of a document with its path. */
export function numbersIn(value: unknown, path: readonly Step[] = []): readonly (readonly [readonly Step[], number])[] {
  if (typeof value === 'number') return [[path, value]];
  if (Array.isArray(value)) return value.flatMap((item, index) => numbersIn(item, [...path, index]));
  if (typeof value !== 'object' || value === null) return [];
  return Object.entries(value).flatMap(([name, inner]) => numbersIn(inner, [...path, name]));
}

/** The path of everything in a document, the document itself first. */
export function pathsIn(value: unknown, path: readonly Step[] = []): readonly (readonly Step[])[] {
  if (typeof value !== 'object' || value === null) return [path];
  return [path, ...Object.entries(value).flatMap(([name, inner]) => pathsIn(inner, [...path, name]))];
}

export function valueAt(document: unknown, path: readonly Step[]): unknown {
  return path.reduce<unknown>((inner, step) => (inner as Record<Step, unknown> | undefined)?.[step], document);
}

/** A copy of a document with the value at a path replaced; undefined takes the field out. */
export function spoiled(document: unknown, path: readonly Step[], value: unknown): unknown {
  const copy: unknown = structuredClone(document);
  const last = path.at(-1);
  if (last === undefined) return value;
  let inner = copy as Record<Step, unknown>;
  for (const step of path.slice(0, -1)) inner = inner[step] as Record<Step, unknown>;
  if (value === undefined) delete inner[last];
  else inner[last] = value;
  return copy;
}

/** A copy with every number changed. */
export function mapNumbers(
  value: unknown,
  change: (number: number, path: readonly Step[]) => number,
  path: readonly Step[] = [],
): unknown {
  if (typeof value === 'number') return change(value, path);
  if (Array.isArray(value)) return value.map((item, index) => mapNumbers(item, change, [...path, index]));
  if (typeof value !== 'object' || value === null) return value;
  const entries = Object.entries(value);
  return Object.fromEntries(entries.map(([name, inner]) => [name, mapNumbers(inner, change, [...path, name])]));
}

/** A copy with every number at the paths that match multiplied. */
export function scaled(document: unknown, matches: (path: string) => boolean, factor: number): unknown {
  return mapNumbers(document, (value, path) => (matches(path.join('.')) ? value * factor : value));
}
