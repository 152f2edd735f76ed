/**
 * What a table is asked to play, in a few words: small plain data that a link, a recording and a message can carry. The levels check it and lay it
 * out (`parsePlanChoice`, `layPlan`); what the words name stands there.
 */
export interface PlanChoice {
  readonly format: typeof PLAN_FORMAT;
  /** Identifiers of lander, site and world. */
  readonly lander: string;
  readonly site: string;
  readonly world: string;
  /** Decides the ground, and nothing else today. */
  readonly seed: number;
  /** Identifier of the start: how high, and how fast. */
  readonly start: string;
  readonly mode: FlightMode;
  /** Seconds of the descent in a second of the clock [-]. */
  readonly pace: Pace;
  readonly sensorTrouble: SensorTrouble;
  /** Identifier of the drill that is played; absent: a free descent. A drill says what is flown: seed, mode and pace alone may be others than its own. */
  readonly drill?: string;
}

/** The only format that is read. */
export const PLAN_FORMAT = 'kilter-plan/1';

/** By hand: Flying sets thrust and tilt. By orders: Flying says what to hold, and the stand-in flies it. */
export const FLIGHT_MODES = ['by hand', 'by orders'] as const;
export type FlightMode = (typeof FLIGHT_MODES)[number];

export const PACES = [1, 0.5, 0.25] as const;
export type Pace = (typeof PACES)[number];

/** Seeded: a source fails at a moment that the seed decides. Engine, legs: something is wrong with those, which the seed decides too. */
export const SENSOR_TROUBLES = ['none', 'seeded', 'engine', 'legs'] as const;
export type SensorTrouble = (typeof SENSOR_TROUBLES)[number];
