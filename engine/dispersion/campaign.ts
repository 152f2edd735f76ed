/**
 * A campaign: one lander met with many touchdowns, drawn from stated distributions. Case i of a campaign depends on the
 * campaign and i alone, so any case can be run again by itself, and the cases shared out in any way.
 */
import { assert } from '../assert.ts';
import type { Lander } from '../lander/lander.ts';
import { hypot2 } from '../math/exponential.ts';
import { atan2 } from '../math/trig.ts';
import type { Soil } from '../ground/soil.ts';
import type { LegCondition, TouchdownCase, TouchdownOutcome } from '../touchdown/touchdownCase.ts';
import {
  CAMPAIGN_INPUTS,
  INPUT_FACTS,
  type CampaignInput,
  type GearChoices,
  type InputDistributions,
  type PairedInputs,
} from './campaignInputs.ts';
import { choose, pairQuantile, quantile } from './distribution.ts';
import { createPointSet, type PointSet, type SamplingMethod } from './pointSet.ts';
import type { Requirement } from './requirement.ts';

export interface Campaign {
  readonly title: string;
  readonly lander: Lander;
  /** [m/s²] */
  readonly gravity: number;
  /** Default rigid ground. An input `bearingStrength` replaces the strength of a bearing soil. */
  readonly soil?: Soil;
  readonly method: SamplingMethod;
  readonly runs: number;
  /** Whole number from 0. */
  readonly seed: number;
  readonly inputs: InputDistributions;
  readonly pairs: readonly PairedInputs[];
  /** Default: always sound. */
  readonly gear?: GearChoices;
  /** Index of the leg whose footpad `padHeight` raises; default 0. */
  readonly padLeg?: number;
  readonly requirement?: CampaignRequirement;
}

export interface CampaignRequirement extends Requirement {
  /** Outcomes that count as success. */
  readonly outcomes: readonly TouchdownOutcome[];
}

/** What was drawn for one case: a number per input, and the gear. */
export interface DrawnInputs {
  readonly values: { readonly [Input in CampaignInput]?: number };
  readonly gear: readonly LegCondition[];
}

/** What one coordinate of a point decides. */
type Axis =
  | { readonly kind: 'input'; readonly input: CampaignInput }
  | { readonly kind: 'pair'; readonly pair: PairedInputs; readonly place: 0 | 1 }
  | { readonly kind: 'gear' };

/** Coordinates of a point in canonical order. Constants and gear that is always the same take none. */
export function campaignAxes(campaign: Campaign): readonly Axis[] {
  const axes: Axis[] = [];
  for (const input of CAMPAIGN_INPUTS) {
    const pair = campaign.pairs.find(({ inputs }) => inputs[0] === input);
    if (pair !== undefined) axes.push({ kind: 'pair', pair, place: 0 }, { kind: 'pair', pair, place: 1 });
    const distribution = campaign.inputs[input];
    if (distribution !== undefined && distribution.kind !== 'constant') axes.push({ kind: 'input', input });
  }
  if ((campaign.gear?.length ?? 0) > 1) axes.push({ kind: 'gear' });
  return axes;
}

/** The points that drive a campaign. */
export function campaignPoints(campaign: Campaign): PointSet {
  const { method, runs, seed } = campaign;
  return createPointSet({ method, dimensions: campaignAxes(campaign).length, size: runs, seed });
}

/** Draws case `index` of a campaign. Make the drawer once and keep it: it holds the points and the axes. */
export function createDrawer(campaign: Campaign): (index: number) => DrawnInputs {
  const points = campaignPoints(campaign);
  const axes = campaignAxes(campaign);
  return (index) => {
    assert(Number.isInteger(index) && index >= 0 && index < campaign.runs, `no case ${index} of ${campaign.runs}`);
    const point = axes.map((_, dimension) => points.coordinate(index, dimension));
    return drawAt(campaign, axes, point);
  };
}

/** Inputs at a point of the unit cube with one coordinate per axis. */
export function drawAt(campaign: Campaign, axes: readonly Axis[], point: readonly number[]): DrawnInputs {
  const values: { [Input in CampaignInput]?: number } = {};
  for (const input of CAMPAIGN_INPUTS) {
    const distribution = campaign.inputs[input];
    if (distribution?.kind === 'constant') values[input] = distribution.value;
  }
  let gear = campaign.gear?.[0]?.value ?? [];
  for (const [i, axis] of axes.entries()) {
    const u = point[i] ?? NaN;
    if (axis.kind === 'input') values[axis.input] = quantile(inputDistribution(campaign, axis.input), u);
    else if (axis.kind === 'gear') gear = choose(campaign.gear ?? [], u);
    else if (axis.place === 0) {
      const [first, second] = axis.pair.inputs;
      [values[first], values[second]] = pairQuantile(axis.pair, u, point[i + 1] ?? NaN);
    }
  }
  return { values, gear };
}

/** The touchdown of drawn inputs. */
export function touchdownOf(campaign: Campaign, drawn: DrawnInputs): TouchdownCase {
  const value = (input: CampaignInput): number => drawn.values[input] ?? INPUT_FACTS[input].fallback ?? NaN;
  const angle = (input: CampaignInput): number => (value(input) * Math.PI) / 180;
  const { speed, azimuth } = travel(drawn);
  const padHeight = value('padHeight');
  const soil = soilOf(campaign, drawn);
  return {
    lander: campaign.lander,
    gravity: campaign.gravity,
    ground: {
      shape: { kind: 'plane', slope: angle('slopeDeg') },
      friction: value('friction'),
      ...(soil && { soil }),
      ...(padHeight !== 0 && { underPad: [{ leg: campaign.padLeg ?? 0, height: padHeight }] }),
    },
    state: {
      horizontalSpeed: speed,
      descentRate: value('descentRate'),
      travelAzimuth: azimuth,
      yaw: angle('yawDeg'),
      pitch: angle('pitchDeg'),
      roll: angle('rollDeg'),
      rates: [angle('rollRateDegPerS'), angle('pitchRateDegPerS'), angle('yawRateDegPerS')],
    },
    legs: legConditions(campaign, drawn, value('crushForceFactor')),
  };
}

/** Names of the independent factors of a campaign, and which factor each coordinate belongs to. */
export function campaignFactors(campaign: Campaign): {
  readonly names: readonly string[];
  readonly factorOf: readonly number[];
} {
  const names: string[] = [];
  const factorOf: number[] = [];
  for (const axis of campaignAxes(campaign)) {
    if (axis.kind === 'input') names.push(axis.input);
    else if (axis.kind === 'gear') names.push('gear');
    else if (axis.place === 0) names.push(axis.pair.inputs.join(' + '));
    factorOf.push(names.length - 1);
  }
  return { names, factorOf };
}

function inputDistribution(campaign: Campaign, input: CampaignInput): NonNullable<InputDistributions[CampaignInput]> {
  const distribution = campaign.inputs[input];
  assert(distribution !== undefined, `no distribution of ${input}`);
  return distribution;
}

/** Travel from either the components or the speed and its azimuth; azimuths count from the fall line, which is +x. */
function travel({ values }: DrawnInputs): { readonly speed: number; readonly azimuth: number } {
  if (values.downhillSpeed === undefined && values.crossSpeed === undefined)
    return { speed: values.horizontalSpeed ?? 0, azimuth: ((values.travelAzimuthDeg ?? 0) * Math.PI) / 180 };
  const downhill = values.downhillSpeed ?? 0;
  const cross = values.crossSpeed ?? 0;
  return { speed: hypot2(downhill, cross), azimuth: atan2(cross, downhill) };
}

function soilOf({ soil }: Campaign, { values }: DrawnInputs): Soil | undefined {
  const strength = values.bearingStrength;
  if (strength === undefined || soil?.kind !== 'bearing') return soil;
  return { ...soil, strength };
}

/** A common factor on the crush forces is a soft leg all round; it multiplies the factor of a leg that is soft anyway. */
function legConditions(campaign: Campaign, { gear }: DrawnInputs, factor: number): readonly LegCondition[] {
  if (factor === 1) return gear;
  return campaign.lander.legs.map((_, leg): LegCondition => {
    const condition = gear.find((other) => other.leg === leg);
    if (condition === undefined) return { leg, kind: 'soft', factor };
    return condition.kind === 'soft' ? { leg, kind: 'soft', factor: condition.factor * factor } : condition;
  });
}
