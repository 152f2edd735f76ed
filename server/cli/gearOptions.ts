import type { Command } from 'commander';
import { CONDITION_FIELDS } from '../../engine/condition/index.ts';
import type { Lander } from '../../engine/lander/index.ts';
import type { LegCondition } from '../../engine/touchdown/index.ts';
import { addField, echoFields, type FieldOptions } from './fieldOptions.ts';
import { legNumbersParser } from './quantity.ts';
import { UsageError } from './usageError.ts';

/** Legs that are not as they should be; legs count from 1. */
export interface GearOptions extends FieldOptions<'softFactor' | 'unlatchedFactor'> {
  readonly missing?: readonly number[];
  readonly soft?: readonly number[];
  readonly unlatched?: readonly number[];
}

const { softFactor: SOFT, unlatchedFactor: UNLATCHED } = CONDITION_FIELDS;

export function addGearOptions(command: Command): Command {
  command
    .optionsGroup('Landing gear (legs count from 1, in the order of the file):')
    .option('--missing <legs>', 'legs that are gone, such as 2 or 1,3', legNumbersParser)
    .option('--soft <legs>', 'legs that crush too easily', legNumbersParser);
  addField(command, 'softFactor');
  command.option('--unlatched <legs>', 'legs that were not latched and fold', legNumbersParser);
  return addField(command, 'unlatchedFactor');
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
  if (missing.length >= lander.legs.length) throw new UsageError('--missing: expected at least one leg left, got none');
  const softFactor = options.softFactor ?? SOFT.fallback;
  const unlatchedFactor = options.unlatchedFactor ?? UNLATCHED.fallback;
  return [
    ...missing.map((number): LegCondition => ({ leg: number - 1, kind: 'missing' })),
    ...soft.map((number): LegCondition => ({ leg: number - 1, kind: 'soft', factor: softFactor })),
    ...unlatched.map((number): LegCondition => ({ leg: number - 1, kind: 'not latched', factor: unlatchedFactor })),
  ];
}

export function checkLegNumbers(option: string, lander: Lander, numbers: readonly number[]): void {
  const absent = numbers.find((number) => number > lander.legs.length);
  if (absent === undefined) return;
  throw new UsageError(`${option}: ${lander.name} has ${lander.legs.length} legs, got leg ${absent}`);
}

/** What was asked, defaults filled in; null where it does not enter. */
export function echoGear(options: GearOptions): Readonly<Record<string, unknown>> {
  const { missing = [], soft = [], unlatched = [] } = options;
  const { softFactor, unlatchedFactor } = echoFields(options, ['softFactor', 'unlatchedFactor']);
  return {
    missing,
    soft,
    softFactor: soft.length === 0 ? null : softFactor,
    unlatched,
    unlatchedFactor: unlatched.length === 0 ? null : unlatchedFactor,
  };
}

/** The legs in words, a piece each: 'leg 2 missing', 'legs 1, 3 soft (0.5 of the crush force)'. */
export function describeGear({ missing, soft, softFactor, unlatched }: GearOptions): readonly string[] {
  return [
    legsIn(missing, 'missing'),
    legsIn(soft, `soft (${softFactor ?? SOFT.fallback} of the crush force)`),
    legsIn(unlatched, 'not latched'),
  ].filter((words) => words !== '');
}

function legsIn(numbers: readonly number[] | undefined, state: string): string {
  if (numbers === undefined || numbers.length === 0) return '';
  return `leg${numbers.length === 1 ? '' : 's'} ${numbers.join(', ')} ${state}`;
}
