import { report, type ProblemList } from '../fieldReader.ts';
import { BOUNDS } from './landerRanges.ts';

/** Names a value that lies outside its bound. */
export function checkBound(
  list: ProblemList,
  value: number,
  bound: keyof typeof BOUNDS,
  where: { readonly path: string; readonly what: string },
): void {
  const { least, most, unit } = BOUNDS[bound];
  if (value >= least && value <= most) return;
  const of = unit === '-' ? '' : ` ${unit}`;
  const expected = `${where.what} from ${least} to ${most}${of} (is every unit right?)`;
  report(list, `implausible-${spell(bound)}`, { path: where.path, expected, came: `${round(value)}${of}` });
}

function spell(name: string): string {
  return name.replace(/[A-Z]/g, (letter) => `-${letter.toLowerCase()}`);
}

/** Three figures are enough to see what is wrong. */
export function round(value: number): string {
  return String(Number(value.toPrecision(3)));
}
