/** What can be dispersed in a campaign, under which name, in which unit, and between which bounds. */
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
  readonly unit: string;
  readonly meaning: string;
  /** What a run may be given: nothing outside is ever drawn. */
  readonly low: number;
  readonly high: number;
  /** Value where the campaign says nothing; undefined: the campaign must say. */
  readonly fallback: number | undefined;
}

const SPEED = { unit: 'm/s', low: -100, high: 100, fallback: 0 } as const;
const TURN = { unit: 'deg', low: -720, high: 720, fallback: 0 } as const;
const LEAN = { unit: 'deg', low: -80, high: 80, fallback: 0 } as const;
const RATE = { unit: 'deg/s', low: -180, high: 180, fallback: 0 } as const;

/** Directions and signs as in touchdown/touchdownCase.ts. */
export const INPUT_FACTS: { readonly [Input in CampaignInput]: InputFacts } = {
  horizontalSpeed: { meaning: 'along the travel azimuth, + downhill', ...SPEED },
  downhillSpeed: { meaning: 'component down the fall line', ...SPEED },
  crossSpeed: { meaning: 'component across the fall line', ...SPEED },
  descentRate: { unit: 'm/s', meaning: 'downwards', low: 0, high: 100, fallback: undefined },
  slopeDeg: { unit: 'deg', meaning: 'of the ground', low: 0, high: 60, fallback: 0 },
  friction: { unit: '-', meaning: 'Coulomb, under footpads and hull', low: 0, high: 10, fallback: undefined },
  yawDeg: { meaning: 'turn of the lander about the vertical', ...TURN },
  pitchDeg: { meaning: 'lean toward its own +x', ...LEAN },
  rollDeg: { meaning: 'lean toward its own -y', ...LEAN },
  pitchRateDegPerS: { meaning: 'about its own y', ...RATE },
  rollRateDegPerS: { meaning: 'about its own x', ...RATE },
  yawRateDegPerS: { meaning: 'about its own z', ...RATE },
  travelAzimuthDeg: { meaning: 'of travel, from the fall line', ...TURN },
  crushForceFactor: { unit: '-', meaning: 'times every crush force', low: 0.01, high: 10, fallback: 1 },
  padHeight: { unit: 'm', meaning: 'rock (+) or hole (-) under one footpad', low: -10, high: 10, fallback: 0 },
  bearingStrength: { unit: 'Pa', meaning: 'of the soil', low: 1, high: 1e9, fallback: undefined },
};

export type InputDistributions = { readonly [Input in CampaignInput]?: Distribution };

/** Two inputs drawn together. */
export interface PairedInputs extends NormalPair {
  readonly inputs: readonly [CampaignInput, CampaignInput];
}

/** States of the landing gear and their chances; an empty list of conditions is sound gear. */
export type GearChoices = readonly Choice<readonly LegCondition[]>[];
