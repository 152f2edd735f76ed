import { readList, readNumber, type NumberRange, type ProblemList } from '../fieldReader.ts';
import type { BodyPoint } from './lander.ts';
import { RANGES } from './landerRanges.ts';

/** Three numbers, each in its own range. */
export function readTriple(
  list: ProblemList,
  value: unknown,
  path: string,
  ranges: readonly [NumberRange, NumberRange, NumberRange],
): BodyPoint | undefined {
  let next = 0;
  const numbers = readList(list, value, path, { least: 3, most: 3, of: 'numbers' }, (item, itemPath) =>
    readNumber(list, item, itemPath, ranges[next++] ?? ranges[2]),
  );
  const [x, y, z] = numbers ?? [];
  return x === undefined || y === undefined || z === undefined ? undefined : [x, y, z];
}

/** A point of the body: anywhere across it, z within a range of heights above the footpad plane. */
export function readBodyPoint(
  list: ProblemList,
  value: unknown,
  path: string,
  height: NumberRange = RANGES.height,
): BodyPoint | undefined {
  return readTriple(list, value, path, [RANGES.position, RANGES.position, height]);
}

/** A point across the body: x and y. */
export function readPlanePoint(list: ProblemList, value: unknown, path: string): readonly [number, number] | undefined {
  const numbers = readList(list, value, path, { least: 2, most: 2, of: 'numbers' }, (item, itemPath) =>
    readNumber(list, item, itemPath, RANGES.position),
  );
  const [x, y] = numbers ?? [];
  return x === undefined || y === undefined ? undefined : [x, y];
}
