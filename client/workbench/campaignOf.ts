import { CAMPAIGN_FORMAT } from '../../engine/dispersion/index.ts';
import { formatLander } from '../../engine/lander/index.ts';
import { studyOf, type BenchState } from './benchState.ts';

export const SPREAD_NAMES = [
  'runs',
  'seed',
  'speedScale',
  'descentDeviation',
  'slopeScale',
  'leanDeviation',
  'fraction',
  'confidence',
] as const;
export type SpreadName = (typeof SPREAD_NAMES)[number];

export const SPREAD_BOUNDS = {
  runs: { unit: '', least: 20, most: 20_000, step: 100, start: 600, whole: true },
  seed: { unit: '', least: 0, most: 1_000_000, step: 1, start: 1, whole: true },
  speedScale: { unit: 'm/s', least: 0.01, most: 5, step: 0.05, start: 0.4 },
  descentDeviation: { unit: 'm/s', least: 0.01, most: 2, step: 0.05, start: 0.3 },
  slopeScale: { unit: 'deg', least: 0.1, most: 15, step: 0.5, start: 3 },
  leanDeviation: { unit: 'deg', least: 0.01, most: 10, step: 0.1, start: 1 },
  fraction: { unit: '', least: 0.5, most: 0.9999, step: 0.01, start: 0.99 },
  confidence: { unit: '', least: 0.5, most: 0.999, step: 0.01, start: 0.95 },
} as const;

/** Farthest that a drawn descent rate lies from the middle, in deviations; slopes are drawn to so many scales. */
const REACH = 4;

/** The campaign document of the arrival on the bench and its spreads: what is run here, and what is saved for the command line. */
export function campaignOf(state: BenchState, given: (name: SpreadName) => number): Readonly<Record<string, unknown>> {
  const asked = studyOf(state);
  const [descentDeviation, slopeScale, lean] = [given('descentDeviation'), given('slopeScale'), given('leanDeviation')];
  const { descentRate, friction } = state.arrival;
  return {
    format: CAMPAIGN_FORMAT,
    title: 'Arrivals of the workbench, invented for exercise',
    // the whole lander, so that the document needs no other file
    lander: asked.ok ? formatLander(asked.value.lander) : null,
    world: state.world,
    method: 'plain',
    runs: given('runs'),
    seed: given('seed'),
    inputs: {
      horizontalSpeed: { kind: 'rayleigh', scale: given('speedScale') },
      travelAzimuthDeg: { kind: 'uniform', low: 0, high: 360 },
      descentRate: {
        kind: 'truncated normal',
        mean: descentRate,
        deviation: descentDeviation,
        low: Math.max(0, descentRate - REACH * descentDeviation),
        high: descentRate + REACH * descentDeviation,
      },
      slopeDeg: { kind: 'rayleigh', scale: slopeScale, high: Math.min(45, REACH * slopeScale) },
      friction: { kind: 'uniform', low: 0.75 * friction, high: 1.25 * friction },
      yawDeg: { kind: 'uniform', low: 0, high: 360 },
      pitchDeg: { kind: 'normal', mean: 0, deviation: lean },
      rollDeg: { kind: 'normal', mean: 0, deviation: lean },
    },
    ...(state.missing.length > 0 && {
      gear: [{ value: state.missing.map((leg) => ({ leg: leg + 1, kind: 'missing' })), weight: 1 }],
    }),
    requirement: { fraction: given('fraction'), confidence: given('confidence') },
  };
}
