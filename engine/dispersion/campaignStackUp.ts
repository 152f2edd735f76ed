/** The closed form beside the statistics: how the dispersions of a campaign stack up against the tip margin. */
import { massProperties } from '../lander/index.ts';
import { pivotBodyOver } from '../pivot/index.ts';
import { landerStance, leastStaticTilt } from '../statics/index.ts';
import type { Campaign } from './campaign.ts';
import { speedInput, spreadOf, type Spread } from './spread.ts';
import { stackUp, type StackUp, type StackUpQuestion } from './stackUp.ts';

/**
 * Stack-up of the plastic trip limit over the nearest edge of the sound lander, travel straight downhill over it. Each
 * dispersed input stands at its median; its tolerance is the farther of its 0.135 % and 99.865 % points, three deviations
 * of a normal. What a section cannot know does not enter: yaw, travel across the fall line, friction, soil, gear, crush.
 *
 * Undefined where the lander does not stand, or has no limit there.
 */
export function campaignStackUp(campaign: Campaign): StackUp | undefined {
  const stance = landerStance(campaign.lander);
  if (stance.kind === 'cannotStand') return undefined;
  const { edge } = leastStaticTilt(stance);
  const speed = spreadOf(campaign, speedInput(campaign));
  const descent = spreadOf(campaign, 'descentRate');
  const slope = inRadians(spreadOf(campaign, 'slopeDeg'));
  const rate = Math.max(
    inRadians(spreadOf(campaign, 'pitchRateDegPerS')).tolerance,
    inRadians(spreadOf(campaign, 'rollRateDegPerS')).tolerance,
  );
  const tolerances: { -readonly [Quantity in keyof StackUpQuestion['tolerances']]: number } = {};
  if (speed.tolerance > 0) tolerances.horizontalSpeed = speed.tolerance;
  // the slope falls with the travel, so more descent is adverse: its tolerance never leads below 0
  if (descent.tolerance > 0) tolerances.descentRate = descent.tolerance;
  if (slope.tolerance > 0) tolerances.slope = slope.tolerance;
  if (rate > 0) tolerances.rate = rate;
  return stackUp({
    body: pivotBodyOver(edge, stance, massProperties(campaign.lander)),
    condition: {
      gravity: campaign.gravity,
      slope: slope.nominal,
      descentRate: descent.nominal,
      // the legs crush and take up the descent, so no foot is first
      firstContact: 'together',
    },
    horizontalSpeed: speed.nominal,
    limit: 'plastic',
    tolerances,
  });
}

function inRadians({ nominal, tolerance }: Spread): Pick<Spread, 'nominal' | 'tolerance'> {
  return { nominal: (nominal * Math.PI) / 180, tolerance: (tolerance * Math.PI) / 180 };
}
