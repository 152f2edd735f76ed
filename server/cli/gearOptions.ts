import type { Command } from 'commander';
import type { Lander } from '../../engine/lander/index.ts';
import type { LegCondition } from '../../engine/touchdown/index.ts';
import { legNumbersParser, quantityParser, type Quantity } from './quantity.ts';
import { UsageError } from './usageError.ts';

/** Legs that are not as they should be; legs count from 1. */
export interface GearOptions {
  readonly missing?: readonly number[];
  readonly soft?: readonly number[];
  readonly softFactor?: number;
  readonly unlatched?: readonly number[];
  readonly unlatchedFactor?: number;
}

const SOFTNESS: Quantity = { unit: '', least: 0.01, most: 10 };
const FOLDING: Quantity = { unit: '', least: 0.001, most: 1 };

/** What is left of the crush forces of a leg named soft, where nothing is said [-]. */
const DEFAULT_SOFT_FACTOR = 0.5;
/** Share of its first crush force at which a leg that is not latched folds, where nothing is said [-]. */
const DEFAULT_UNLATCHED_FACTOR = 0.05;

export function addGearOptions(command: Command): Command {
  return command
    .optionsGroup('Landing gear (legs count from 1, in the order of the file):')
    .option('--missing <legs>', 'legs that are gone, such as 2 or 1,3', legNumbersParser)
    .option('--soft <legs>', 'legs that crush too easily', legNumbersParser)
    .option(
      '--soft-factor <ratio>',
      `what is left of their crush forces (default: ${DEFAULT_SOFT_FACTOR})`,
      quantityParser(SOFTNESS),
    )
    .option('--unlatched <legs>', 'legs that were not latched and fold', legNumbersParser)
    .option(
      '--unlatched-factor <ratio>',
      `share of their first crush force at which they fold (default: ${DEFAULT_UNLATCHED_FACTOR})`,
      quantityParser(FOLDING),
    );
}

export function readGear(lander: Lander, options: GearOptions): readonly LegCondition[] {
  const { missing = [], soft = [], unlatched = [] } = options;
  if (options.softFactor !== undefined && soft.length === 0) throw new UsageError('--soft-factor goes with --soft');
  if (options.unlatchedFactor !== undefined && unlatched.length === 0)
    throw new UsageError('--unlatched-factor goes with --unlatched');
  checkLegNumbers('--missing', lander, missing);
  checkLegNumbers('--soft', lander, soft);
  checkLegNumbers('--unlatched', lander, unlatched);
  const named = [...missing, ...soft, ...unlatched];
  const twice = named.find((number, index) => named.indexOf(number) !== index);
  if (twice !== undefined) throw new UsageError(`leg ${twice} is given two conditions`);
  if (missing.length >= lander.legs.length)
    throw new UsageError('--missing: expected at least one leg left, came none');
  const softFactor = options.softFactor ?? DEFAULT_SOFT_FACTOR;
  const unlatchedFactor = options.unlatchedFactor ?? DEFAULT_UNLATCHED_FACTOR;
  return [
    ...missing.map((number): LegCondition => ({ leg: number - 1, kind: 'missing' })),
    ...soft.map((number): LegCondition => ({ leg: number - 1, kind: 'soft', factor: softFactor })),
    ...unlatched.map((number): LegCondition => ({ leg: number - 1, kind: 'not latched', factor: unlatchedFactor })),
  ];
}

export function checkLegNumbers(option: string, lander: Lander, numbers: readonly number[]): void {
  const absent = numbers.find((number) => number > lander.legs.length);
  if (absent === undefined) return;
  throw new UsageError(`${option}: ${lander.name} has ${lander.legs.length} legs, came leg ${absent}`);
}

/** What was asked, defaults filled in; null where it does not enter. */
export function echoGear({
  missing = [],
  soft = [],
  unlatched = [],
  ...factors
}: GearOptions): Readonly<Record<string, unknown>> {
  return {
    missing,
    soft,
    softFactor: soft.length === 0 ? null : (factors.softFactor ?? DEFAULT_SOFT_FACTOR),
    unlatched,
    unlatchedFactor: unlatched.length === 0 ? null : (factors.unlatchedFactor ?? DEFAULT_UNLATCHED_FACTOR),
  };
}

/** The legs in words, a piece each: 'leg 2 missing', 'legs 1, 3 soft (0.5 of the crush force)'. */
export function describeGear({ missing, soft, softFactor, unlatched }: GearOptions): readonly string[] {
  return [
    legsIn(missing, 'missing'),
    legsIn(soft, `soft (${softFactor ?? DEFAULT_SOFT_FACTOR} of the crush force)`),
    legsIn(unlatched, 'not latched'),
  ].filter((words) => words !== '');
}

function legsIn(numbers: readonly number[] | undefined, state: string): string {
  if (numbers === undefined || numbers.length === 0) return '';
  return `leg${numbers.length === 1 ? '' : 's'} ${numbers.join(', ')} ${state}`;
}
