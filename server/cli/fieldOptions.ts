import type { Command } from 'commander';
import { CONDITION_FIELDS, type ConditionField, type ConditionName } from '../../engine/condition/index.ts';
import { quantityParser, type Quantity } from './quantity.ts';

/** Options that are called shorter than their field. */
const SHORT = { horizontalSpeed: 'horizontal', descentRate: 'descent' } as const;

/** An option leaves the unit out: fallAzimuthDeg is --fall-azimuth, which is read as fallAzimuth. */
type OptionKey<Name extends ConditionName> = Name extends keyof typeof SHORT
  ? (typeof SHORT)[Name]
  : Name extends `${infer Bare}DegPerSecond` | `${infer Bare}Deg`
    ? Bare
    : Name;

/** Options for these fields, in the units of the command line. */
export type FieldOptions<Name extends ConditionName> = { readonly [Field in Name as OptionKey<Field>]?: number };

/** What one verb says of a field besides what is always said. */
interface Particulars {
  /** Before and after its meaning. */
  readonly before?: string;
  readonly note?: string;
  /** What is taken where nothing is said, in place of the field's own fallback. */
  readonly otherwise?: string;
  /** In place of its unit. */
  readonly symbol?: string;
  /** Where the verb takes more or less than the field. */
  readonly within?: { readonly least: number; readonly most: number };
}

/** Which way a slope on the command line falls. */
export const DOWNHILL = ', + downhill in the direction of travel';

export function addField(command: Command, name: ConditionName, particulars: Particulars = {}): Command {
  const { meaning, unit, fallback, whole }: ConditionField = CONDITION_FIELDS[name];
  const { before = '', note = '', within = {} } = particulars;
  const symbol = particulars.symbol ?? (unit === '-' ? (whole === true ? 'number' : 'ratio') : unit);
  const otherwise = particulars.otherwise ?? (fallback === undefined ? '' : `default: ${fallback}`);
  return command.option(
    `--${optionKey(name).replace(/[A-Z]/g, (letter) => `-${letter.toLowerCase()}`)} <${symbol}>`,
    `${before}${meaning}${note}${otherwise === '' ? '' : ` (${otherwise})`}`,
    quantityParser({ ...quantityOf(name), ...within }),
  );
}

/** The slope of the closed forms, which know no ground too steep to stand on. */
export function addClosedFormSlope(command: Command): Command {
  return addField(command, 'slopeDeg', { note: DOWNHILL, within: { least: -80, most: 80 } });
}

/** What an option for this field accepts. */
export function quantityOf(name: ConditionName): Quantity {
  const { unit, least, most, whole = false }: ConditionField = CONDITION_FIELDS[name];
  return { unit: unit === '-' ? '' : unit, least, most, whole };
}

/** What was asked, fallbacks filled in; null where nothing was said and nothing is assumed. */
export function echoFields<Name extends ConditionName>(
  options: FieldOptions<Name>,
  names: readonly Name[],
): { readonly [Field in Name]?: number | null } {
  const echoed: Partial<Record<Name, number | null>> = {};
  for (const name of names) {
    const given: unknown = Reflect.get(options, optionKey(name));
    const { fallback }: ConditionField = CONDITION_FIELDS[name];
    echoed[name] = typeof given === 'number' ? given : (fallback ?? null);
  }
  return echoed;
}

/** 'slope 5 deg', 'friction 0.8'. */
export function sayField(name: ConditionName, value: number): string {
  const { words, unit } = CONDITION_FIELDS[name];
  return `${words} ${value}${unit === '-' ? '' : ` ${unit}`}`;
}

function optionKey(name: ConditionName): string {
  return (SHORT as Partial<Record<ConditionName, string>>)[name] ?? name.replace(/Deg(PerSecond)?$/, '');
}
