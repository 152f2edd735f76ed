import type { Campaign } from '../../engine/dispersion/campaign.ts';
import type { SimulateTouchdown } from '../../engine/dispersion/tally.ts';
import { tripLimit } from '../../engine/pivot/index.ts';
import { plainLander } from './plainLander.ts';

const MASS = { mass: 1500, centerHeight: 2, halfStance: 1.4, inertia: 1500 };

/** Four sound legs, some dispersions, no requirement. */
export function plainCampaign(changes: Partial<Campaign> = {}): Campaign {
  return {
    title: 'Plain',
    lander: plainLander(MASS),
    gravity: 1.62422,
    method: 'plain',
    runs: 2000,
    seed: 7,
    inputs: {
      horizontalSpeed: { kind: 'rayleigh', scale: 0.8 },
      descentRate: { kind: 'truncated normal', mean: 1.5, deviation: 0.3, low: 0.2, high: 3 },
      slopeDeg: { kind: 'uniform', low: 0, high: 12 },
      friction: { kind: 'constant', value: 0.8 },
    },
    pairs: [],
    ...changes,
  };
}

/** Answers by the closed form over one edge: upright below the plastic trip limit. Not a simulation; for tests alone. */
export const answerByClosedForm: SimulateTouchdown = ({ gravity, ground, state }) => {
  const slope = ground.shape.kind === 'plane' ? ground.shape.slope : 0;
  const limit = tripLimit(MASS, { gravity, slope, descentRate: state.descentRate, firstContact: 'leading' });
  const margin = limit.kind === 'limit' ? limit.plastic.horizontal - state.horizontalSpeed : -1;
  return {
    outcome: margin > 0 ? 'upright' : 'tipped downhill',
    leastMargin: { value: margin, time: 0 },
    strokesUsed: [state.descentRate / 4, 0],
    peakLoads: [1000 * state.descentRate],
    peakAcceleration: 10 * state.descentRate,
    clearance: 0.5,
    slide: 0,
    unsettledReturns: 0,
    restTiltDeg: (slope * 180) / Math.PI,
  };
};
