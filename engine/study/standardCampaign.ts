import { CAMPAIGN_FORMAT } from '../dispersion/index.ts';

/**
 * The campaign of a lander, given by name, path or whole document, that is used where nobody says more. Its dispersions are invented for exercise.
 */
export function standardCampaign(lander: unknown): Readonly<Record<string, unknown>> {
  return {
    format: CAMPAIGN_FORMAT,
    title: 'Standard arrivals, invented for exercise',
    lander,
    world: 'moon',
    method: 'plain',
    runs: 1000,
    seed: 1,
    inputs: {
      horizontalSpeed: { kind: 'rayleigh', scale: 0.4 },
      travelAzimuthDeg: { kind: 'uniform', low: 0, high: 360 },
      descentRate: { kind: 'truncated normal', mean: 1.5, deviation: 0.3, low: 0.3, high: 3 },
      slopeDeg: { kind: 'rayleigh', scale: 3, high: 15 },
      friction: { kind: 'uniform', low: 0.5, high: 1 },
      yawDeg: { kind: 'uniform', low: 0, high: 360 },
      pitchDeg: { kind: 'normal', mean: 0, deviation: 1 },
      rollDeg: { kind: 'normal', mean: 0, deviation: 1 },
    },
    requirement: { fraction: 0.99, confidence: 0.95 },
  };
}
