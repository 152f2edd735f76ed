/**
 * The fields of a touchdown, each described once. Keys are the names in JSON, with the unit in the name where it is not SI. From here come
 * the options of the command line and what it echoes, the inputs of a campaign and its soil, and the names by which the checked ranges
 * look them up.
 */
import { ARRIVAL_FIELDS } from './arrivalFields.ts';
import type { DerivedField, NamedField } from './conditionField.ts';
import { GEAR_FIELDS } from './gearFields.ts';
import { GROUND_FIELDS, SOIL_FIELDS } from './groundFields.ts';

export const CONDITION_FIELDS = { ...ARRIVAL_FIELDS, ...GROUND_FIELDS, ...SOIL_FIELDS, ...GEAR_FIELDS } as const;
export type ConditionName = keyof typeof CONDITION_FIELDS;

/** Lists of legs, and names. */
const NAMED_FIELDS = {
  missing: { words: 'missing legs' },
  soft: { words: 'soft legs' },
  unlatched: { words: 'legs that are not latched' },
  gear: { words: 'legs that may be missing, soft or not latched' },
  underPad: { words: 'a rock or a hole under a footpad' },
  site: { words: 'uneven ground' },
} as const satisfies Readonly<Record<string, NamedField>>;

/** What the checked ranges look at besides: the shape of the body, and how much was done. */
const DERIVED_FIELDS = {
  stanceOverHeight: { words: 'half stance over height', unit: '-' },
  inertiaShare: { words: 'inertia over m L^2', unit: '-' },
  startShare: { words: 'start over balance tilt', unit: '-' },
  depthOverRadius: { words: 'depth over radius', unit: '-' },
  lyingDepthOverRadius: { words: 'depth over radius of a lying tank', unit: '-' },
  legs: { words: 'legs', unit: '-' },
  supports: { words: 'stations that carry the beam', unit: '-' },
  runs: { words: 'runs', unit: '-' },
} as const satisfies Readonly<Record<string, DerivedField>>;

const RANGED_FIELDS = { ...CONDITION_FIELDS, ...DERIVED_FIELDS } as const;
/** A field that has a unit, so that it can have a checked range. */
export type RangedField = keyof typeof RANGED_FIELDS;

const ALL_FIELDS = { ...RANGED_FIELDS, ...NAMED_FIELDS } as const;
export type FieldName = keyof typeof ALL_FIELDS;

export function rangedField(name: RangedField): DerivedField {
  return RANGED_FIELDS[name];
}

export function fieldNamed(name: FieldName): NamedField {
  return ALL_FIELDS[name];
}

/** Every name that a field goes by: its own, and that among the inputs of a campaign. */
export function namesOf(name: FieldName): readonly string[] {
  const { inCampaign } = fieldNamed(name);
  return inCampaign === undefined ? [name] : [name, inCampaign];
}
