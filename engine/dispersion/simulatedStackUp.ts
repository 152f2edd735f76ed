/** How the dispersions of a campaign stack up against the tip limit of the lander itself, found by simulation. */
import {
  criticalAzimuths,
  leastTipLimit,
  prepareTouchdown,
  type TipLimitOptions,
  type TouchdownKernel,
} from '../touchdown/index.ts';
import { touchdownOf, type Campaign, type DrawnInputs } from './campaign.ts';
import { CAMPAIGN_INPUTS, type CampaignInput } from './campaignInputs.ts';
import { speedInput, spreadOf } from './spread.ts';

/** Speeds are horizontal, straight downhill [m/s]. */
export interface SimulatedStackUp {
  /** Azimuths of travel over the lander that were looked at everywhere: each edge, each foot, and between. */
  readonly azimuths: number;
  /** Tip limit with every input at its median, least of all azimuths; undefined: none up to `upTo`. */
  readonly nominalLimit: number | undefined;
  readonly upTo: number;
  /** The speed itself, at its median, and the farther end of its tolerance. */
  readonly speed: number;
  readonly speedTolerance: number;
  /** Each other dispersed input alone at its worse end, the largest loss first. */
  readonly contributions: readonly StackedInput[];
  /** Least tip limit of all points looked at, among them every input at its worse end together. */
  readonly worstLimit: number | undefined;
  /** That less the speed at the end of its tolerance; undefined where nothing tipped. */
  readonly worstMargin: number | undefined;
  /** Nominal margin less the root of the sum of squares of the losses; undefined without a nominal limit. */
  readonly rootSumSquare: number | undefined;
}

interface StackedInput {
  readonly input: CampaignInput;
  /** The end at which more is lost, in the unit of the input. */
  readonly end: number;
  /** Loss of the nominal tip limit there; 0 where neither end loses any [m/s]. */
  readonly loss: number;
}

/** Not stacked: the speed has its own place, directions are looked at all round, and a tip limit takes the worse of two frictions by itself. */
const APART: readonly CampaignInput[] = [
  'horizontalSpeed',
  'downhillSpeed',
  'crossSpeed',
  'travelAzimuthDeg',
  'yawDeg',
  'friction',
];

/**
 * Stack-up of the simulated tip limit of the lander with sound gear, travel straight downhill. Inputs stand at their medians; an end is
 * the 0.135 % or 99.865 % point. What is found as worst is never milder than any point looked at, but a point inside may be worse still:
 * tip limits are not monotone.
 */
export function simulatedStackUp(campaign: Campaign): SimulatedStackUp | undefined {
  const prepared = prepareTouchdown(campaign.lander);
  if (!prepared.ok) return undefined;
  const azimuths = criticalAzimuths(campaign.lander);
  const stacked = CAMPAIGN_INPUTS.filter((input) => !APART.includes(input) && spreadOf(campaign, input).tolerance > 0);
  const medians = Object.fromEntries(
    CAMPAIGN_INPUTS.filter((input) => isGiven(campaign, input)).map((input) => [
      input,
      spreadOf(campaign, input).nominal,
    ]),
  );
  const limitAt = (changed: DrawnInputs['values'], options: TipLimitOptions = {}): ReturnType<typeof leastTipLimit> =>
    limitOver(prepared.value, campaign, { azimuths, values: { ...medians, ...changed } }, options);
  const nominal = limitAt({});
  const upTo = nominal.speed ?? nominal.upTo;
  const contributions: StackedInput[] = [];
  const corner: { [Input in CampaignInput]?: number } = {};
  let least = nominal.speed;
  for (const input of stacked) {
    const { low, high } = spreadOf(campaign, input);
    const limits = [low, high].map((end) => ({ end, limit: limitAt({ [input]: end }, { upTo }).speed }));
    const [worse] = limits.toSorted((a, b) => (a.limit ?? Infinity) - (b.limit ?? Infinity));
    if (worse?.limit === undefined) continue;
    corner[input] = worse.end;
    least = Math.min(least ?? Infinity, worse.limit);
    contributions.push({ input, end: worse.end, loss: upTo - worse.limit });
  }
  const worstLimit = limitAt(corner, { upTo: least ?? upTo }).speed ?? least;
  const { nominal: speed, tolerance: speedTolerance } = spreadOf(campaign, speedInput(campaign));
  const squares = contributions.reduce((sum, { loss }) => sum + loss * loss, speedTolerance * speedTolerance);
  return {
    azimuths: azimuths.length,
    nominalLimit: nominal.speed,
    upTo: nominal.upTo,
    speed,
    speedTolerance,
    contributions: contributions.toSorted((a, b) => b.loss - a.loss),
    worstLimit,
    worstMargin: worstLimit === undefined ? undefined : worstLimit - speed - speedTolerance,
    rootSumSquare: nominal.speed === undefined ? undefined : nominal.speed - speed - Math.sqrt(squares),
  };
}

function isGiven({ inputs, pairs }: Campaign, input: CampaignInput): boolean {
  return inputs[input] !== undefined || pairs.some((pair) => pair.inputs.includes(input));
}

/** The least tip limit of one point of the box over the azimuths, which are those of travel in the lander's own frame. */
function limitOver(
  kernel: TouchdownKernel,
  campaign: Campaign,
  { azimuths, values }: { readonly azimuths: readonly number[]; readonly values: DrawnInputs['values'] },
  options: TipLimitOptions,
): ReturnType<typeof leastTipLimit> {
  const { lander: _, ...arrival } = touchdownOf(campaign, { values, gear: [] });
  const toward = (azimuth: number): typeof arrival => ({
    ...arrival,
    state: { ...arrival.state, horizontalSpeed: 0, travelAzimuth: 0, yaw: -azimuth },
  });
  return leastTipLimit(kernel, azimuths, toward, options);
}
