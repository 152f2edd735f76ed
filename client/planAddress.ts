import type { FieldProblem, Result } from '../engine/result.ts';
import type { PlanChoice } from '../engine/table/index.ts';
import { firstChoice, parsePlanChoice } from '../levels/index.ts';

/** Everyone's first landing is over the same ground; an address may name another with `?seed=`. */
export const FIRST_SEED = 1;

/** Which fields of a choice an address names; the others are as in the first landing. */
const NAMED = ['lander', 'site', 'world', 'start', 'seed', 'mode', 'pace', 'sensorTrouble'] as const;
/** Those that are numbers. */
const NUMBERS: readonly string[] = ['seed', 'pace'];
/** Those that an address names even where they are as in the first landing. */
const ALWAYS: readonly string[] = ['lander', 'site', 'world', 'start', 'seed'];

/** The choice that the part of an address after '?' names; undefined where it names none. A wrong word is refused, not passed over. */
export function choiceInAddress(search: string): Result<PlanChoice, readonly FieldProblem[]> | undefined {
  const words = new URLSearchParams(search);
  const named = NAMED.filter((name) => words.has(name));
  if (named.length === 0) return undefined;
  const said = named.map((name) => {
    const word = words.get(name) ?? '';
    return [name, NUMBERS.includes(name) && /^\d+(\.\d+)?$/.test(word) ? Number(word) : word] as const;
  });
  return parsePlanChoice({ ...firstChoice(FIRST_SEED), ...Object.fromEntries(said) });
}

/** The part of an address that names a choice, such as '?lander=steeple&site=coombe-ledge&world=moon&start=low&seed=1'; whatever else stood there stays. */
export function addressOf(choice: PlanChoice, search = ''): string {
  const words = new URLSearchParams(withoutChoice(search));
  const usual = firstChoice(FIRST_SEED);
  for (const name of NAMED)
    if (ALWAYS.includes(name) || choice[name] !== usual[name]) words.set(name, String(choice[name]));
  return `?${words.toString()}`;
}

export function withoutChoice(search: string): string {
  const words = new URLSearchParams(search);
  for (const name of NAMED) words.delete(name);
  return words.size === 0 ? '' : `?${words.toString()}`;
}
