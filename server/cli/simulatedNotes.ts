import type { Lander } from '../../engine/lander/index.ts';
import { simulateTouchdown, type LegCondition, type TouchdownResult } from '../../engine/touchdown/index.ts';
import { toRadians } from './angles.ts';
import { DEFAULT_FRICTION } from './groundOptions.ts';
import type { LimitRow } from './limitRow.ts';
import { readState } from './stateOptions.ts';

/** What a closed form was asked, to see by simulation whether its answer can be relied on. */
export interface SimulatedQuestion {
  readonly lander: Lander;
  readonly gravity: number;
  /** + downhill in the direction of travel, or toward the azimuth of the fall where one is given [deg]. */
  readonly slopeDeg: number;
  readonly fallAzimuthDeg: number | undefined;
  readonly descentRate: number | undefined;
  /** Toward the direction of travel [deg/s]. */
  readonly rate: number | undefined;
  readonly friction: number | undefined;
  /** Indices of legs that are gone. */
  readonly missing: readonly number[];
}

/** Share of the plastic limit at which a lander that tips makes the limit one not to rely on [-]. Leaves room for the rounding of models. */
const NEAR_LIMIT = 0.95;

/** Reasons not to rely on the limits of a lander, found by simulating it upright at that descent rate; none without one. */
export function simulatedNotes(question: SimulatedQuestion, least: LimitRow): readonly string[] {
  const { descentRate } = question;
  if (descentRate === undefined || descentRate === 0) return [];
  const notes: string[] = [];
  if (land(question, descentRate, 0, least.azimuthDeg)?.limitsHit.includes('crush exhausted') === true)
    notes.push(
      `At ${descentRate} m/s down a leg is used up even without drift, so these limits do not hold: see kilter touchdown.`,
    );
  if (!least.stands || least.plasticHorizontal <= 0) return notes;
  const near = land(question, descentRate, NEAR_LIMIT * least.plasticHorizontal, least.azimuthDeg);
  if (near !== undefined && near.limitsHit.some((limit) => limit.startsWith('tip')))
    notes.push(
      `Simulated upright at ${NEAR_LIMIT * 100} % of the plastic limit it tips already: the legs that touch first turn it. See kilter touchdown.`,
    );
  return notes;
}

/** Travel toward an azimuth of the lander; undefined where the simulation refuses the input. */
function land(
  { lander, gravity, slopeDeg, fallAzimuthDeg, rate = 0, friction = DEFAULT_FRICTION, missing }: SimulatedQuestion,
  descent: number,
  horizontal: number,
  azimuthDeg: number,
): TouchdownResult | undefined {
  const fallDeg = (fallAzimuthDeg === undefined ? 0 : fallAzimuthDeg - azimuthDeg) + (slopeDeg < 0 ? 180 : 0);
  const found = simulateTouchdown({
    lander,
    gravity,
    ground: {
      shape: { kind: 'plane', slope: toRadians(Math.abs(slopeDeg)), fallAzimuth: toRadians(fallDeg) },
      friction,
    },
    state: readState({ horizontal, descent, yaw: -azimuthDeg, rate }, 0),
    legs: missing.map((leg): LegCondition => ({ leg, kind: 'missing' })),
  });
  return found.ok ? found.value : undefined;
}
