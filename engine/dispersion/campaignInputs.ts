/** What can be dispersed in a campaign, under which name, in which unit, and between which bounds. */
import { CONDITION_FIELDS, type ConditionField, type ConditionName } from '../condition/index.ts';
import type { LegCondition } from '../touchdown/touchdownCase.ts';
import type { Choice, Distribution, NormalPair } from './distribution.ts';

/**
 * In canonical order: it fixes which coordinate of a point drives which input, so that the same campaign gives the same
 * cases however its document is sorted. What usually matters most comes first, where Sobol' points are evenest.
 */
export const CAMPAIGN_INPUTS = [
  'horizontalSpeed',
  'downhillSpeed',
  'crossSpeed',
  'descentRate',
  'slopeDeg',
  'friction',
  'yawDeg',
  'pitchDeg',
  'rollDeg',
  'pitchRateDegPerS',
  'rollRateDegPerS',
  'yawRateDegPerS',
  'travelAzimuthDeg',
  'crushForceFactor',
  'padHeight',
  'bearingStrength',
] as const;
export type CampaignInput = (typeof CAMPAIGN_INPUTS)[number];

interface InputFacts {
  /** A short name. */
  readonly words: string;
  readonly unit: string;
  readonly meaning: string;
  /** What a run may be given: nothing outside is ever drawn. */
  readonly low: number;
  readonly high: number;
  /** Value where the campaign says nothing; undefined: the campaign must say. */
  readonly fallback: number | undefined;
}

/** Rates and turns as they are drawn: no faster than any lander may turn, and so far round that a distribution may run across north. */
const SLOW = { low: -180, high: 180 } as const;
const AROUND = { low: -720, high: 720 } as const;

/** Directions and signs as in touchdown/touchdownCase.ts. */
export const INPUT_FACTS: { readonly [Input in CampaignInput]: InputFacts } = {
  horizontalSpeed: factsOf('horizontalSpeed', { note: ' along the travel azimuth, + downhill' }),
  downhillSpeed: factsOf('downhillSpeed'),
  crossSpeed: factsOf('crossSpeed'),
  descentRate: factsOf('descentRate'),
  // a slope falls toward azimuth 0: uphill is a travel azimuth of 180
  slopeDeg: factsOf('slopeDeg', { low: 0 }),
  friction: factsOf('friction', { note: ', Coulomb, under footpads and hull' }),
  yawDeg: factsOf('yawDeg', AROUND),
  pitchDeg: factsOf('pitchDeg'),
  rollDeg: factsOf('rollDeg'),
  pitchRateDegPerS: factsOf('pitchRateDegPerSecond', SLOW),
  rollRateDegPerS: factsOf('rollRateDegPerSecond', SLOW),
  yawRateDegPerS: factsOf('yawRateDegPerSecond', SLOW),
  travelAzimuthDeg: factsOf('travelAzimuthDeg', { ...AROUND, note: ', from the fall line' }),
  crushForceFactor: factsOf('crushForceFactor'),
  padHeight: factsOf('padHeight'),
  bearingStrength: factsOf('soilStrength'),
};

/** The facts of a field as a campaign takes them; a note says what is particular there. */
function factsOf(
  name: ConditionName,
  { note = '', ...range }: { readonly note?: string; readonly low?: number; readonly high?: number } = {},
): InputFacts {
  const { words, unit, meaning, least, most, fallback }: ConditionField = CONDITION_FIELDS[name];
  return { words, unit, meaning: `${meaning}${note}`, low: least, high: most, fallback, ...range };
}

export type InputDistributions = { readonly [Input in CampaignInput]?: Distribution };

/** Two inputs drawn together. */
export interface PairedInputs extends NormalPair {
  readonly inputs: readonly [CampaignInput, CampaignInput];
}

/** States of the landing gear and their chances; an empty list of conditions is sound gear. */
export type GearChoices = readonly Choice<readonly LegCondition[]>[];
