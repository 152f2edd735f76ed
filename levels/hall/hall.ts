import type { Lander } from '../../engine/lander/index.ts';
import type { ShapeField } from '../../engine/study/index.ts';
import type { PlanChoice } from '../../engine/table/index.ts';

/** What a presenter shows to a hall, in this order. */
export interface Hall {
  readonly title: string;
  readonly scenes: readonly HallScene[];
}

export type HallScene = FilmScene | DialScene | FlightScene;

interface Asked {
  /** The headline: one question to the hall. */
  readonly question: string;
  /** What the presenter says when all is seen. */
  readonly answer: string;
}

/** Two or three touchdowns, side by side on one clock. */
export interface FilmScene extends Asked {
  readonly kind: 'film';
  /** Whether phones say first which of them falls. */
  readonly isVote: boolean;
  /** Time of the touchdown in that of the film [-]; below 1: slow motion. */
  readonly pace: number;
  readonly arrivals: readonly HallArrival[];
}

/** One dimension of a lander, changed while the hall looks at its tip limit on some worlds. */
export interface DialScene extends Asked {
  readonly kind: 'dial';
  readonly field: ShapeField;
  /** Of the field, SI. */
  readonly from: number;
  readonly to: number;
  readonly step: number;
  /** As shipped. */
  readonly lander: Lander;
  readonly worlds: readonly string[];
  readonly slopeDeg: number;
  /** [m/s] */
  readonly descentRate: number;
  /** [-] */
  readonly friction: number;
}

/** Every phone flies the same descent at the same time; the hall sees all landings. */
export interface FlightScene extends Asked {
  readonly kind: 'flight';
  readonly descent: HallDescent;
}

/** What all of them fly, by hand and as it is: in the words of a choice of a landing. */
export type HallDescent = Pick<PlanChoice, 'lander' | 'site' | 'world' | 'start' | 'seed'>;

/** One touchdown of a film. */
export interface HallArrival {
  readonly name: string;
  /** With everything changed that the scene changes. */
  readonly lander: Lander;
  /** Indices of legs that are gone. */
  readonly missing: readonly number[];
  readonly world: string;
  readonly slopeDeg: number;
  /** [m/s] */
  readonly descentRate: number;
  /** + downhill [m/s]. */
  readonly horizontalSpeed: number;
  /** [-] */
  readonly friction: number;
  /** Turn of the lander about the vertical [deg]. */
  readonly yawDeg: number;
}
