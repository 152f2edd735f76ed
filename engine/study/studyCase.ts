import { yawDirections, type EnvelopeQuestion } from '../envelope/index.ts';
import type { Lander } from '../lander/index.ts';
import { toRadians } from '../math/index.ts';
import type { LegCondition, TouchdownConditions } from '../touchdown/index.ts';
import type { ArrivalQuestion } from './arrivals.ts';

/** One arrival of one lander, as a study asks about it: upright, on a plane, with nothing else in doubt. */
export interface StudyCase {
  readonly lander: Lander;
  /** [m/s²] */
  readonly gravity: number;
  /** 0 or more; the ground falls in the direction of travel [deg]. */
  readonly slopeDeg: number;
  /** [m/s] */
  readonly descentRate: number;
  /** + downhill [m/s]. */
  readonly horizontalSpeed: number;
  /** [-] */
  readonly friction: number;
  /** Indices of legs that are gone. */
  readonly missing: readonly number[];
}

/** The same but for the direction and the speed of travel. */
export function arrivalQuestion(asked: StudyCase): ArrivalQuestion {
  const { lander, gravity, slopeDeg, descentRate, friction, missing } = asked;
  return { lander, gravity, slopeDeg, descentRate, friction, missing };
}

/** How one touchdown of the case differs from the arrival asked about. */
export interface StudiedTouchdown {
  readonly horizontalSpeed: number;
  readonly descentRate: number;
  /** Turn of the lander about the vertical [rad]. */
  readonly yaw: number;
}

export function touchdownConditions(asked: StudyCase, { yaw, ...speeds }: StudiedTouchdown): TouchdownConditions {
  return { ...surroundings(asked), state: { ...speeds, yaw } };
}

/** How the plane of horizontal speed and descent rate is looked at. */
export interface PlaneGrid {
  /** Speeds from minus this to this [m/s]. */
  readonly speedTo: number;
  /** From 0 [m/s]. */
  readonly descentTo: number;
  /** Of each side. */
  readonly steps: number;
  /** The worst of so many, all round. */
  readonly yaws: number;
}

export function planeQuestion(asked: StudyCase, { speedTo, descentTo, steps, yaws }: PlaneGrid): EnvelopeQuestion {
  return {
    lander: asked.lander,
    conditions: surroundings(asked),
    horizontalSpeed: { from: -speedTo, to: speedTo, count: steps + 1 },
    descentRate: { from: 0, to: descentTo, count: steps + 1 },
    directions: yawDirections(yaws),
  };
}

function surroundings({ gravity, slopeDeg, friction, missing }: StudyCase): Omit<TouchdownConditions, 'state'> {
  return {
    gravity,
    ground: { shape: { kind: 'plane', slope: toRadians(slopeDeg), fallAzimuth: 0 }, friction },
    legs: missing.map((leg): LegCondition => ({ leg, kind: 'missing' })),
  };
}
