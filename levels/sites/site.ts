import type { Soil } from '../../engine/ground/index.ts';

/** Ground to land on. Only `parseSite` makes one from foreign data. SI; angles in radians. */
export interface Site {
  /** Lower-case identifier, such as 'saddlers-bench'. */
  readonly id: string;
  readonly name: string;
  readonly summary: string;
  /** Over which place descents to it begin [m]. */
  readonly startX: number;
  readonly ground: GroundShape;
}

/** What the ground of a site is made of; a seed turns it into heights. */
export interface GroundShape {
  /** From end to end, x = 0 in the middle [m]. */
  readonly width: number;
  /** Distance between heights [m]. */
  readonly spacing: number;
  /** Under footpads and hull [-]. */
  readonly friction: number;
  /** Under the footpads; absent: rigid. */
  readonly soil?: Soil;
  /** Base slopes from the left end to the right, each up to its `untilX`; the last reaches the right end. */
  readonly slopes: readonly BaseSlope[];
  readonly undulation: Undulation;
  readonly craters: CraterField;
  readonly steps: StepField;
}

export interface BaseSlope {
  /** [m] */
  readonly untilX: number;
  /** Positive where the ground rises to the right [rad]. */
  readonly slope: number;
}

/**
 * Smooth ups and downs: waves between two wavelengths, three an octave, with amplitudes in proportion to
 * wavelength^hurst (self-affine ground) and random phases.
 */
export interface Undulation {
  /** Root mean square of the height over a long stretch [m]. */
  readonly rmsHeight: number;
  /** [m] */
  readonly shortest: number;
  readonly longest: number;
  /** 0 to 1 [-]; larger is smoother. */
  readonly hurst: number;
}

/** Smooth bowls at random places. */
export interface CraterField {
  readonly count: number;
  /** [m] */
  readonly leastDiameter: number;
  readonly mostDiameter: number;
  /** Depth over diameter [-]. */
  readonly depthRatio: number;
}

/** Smooth ledges at random places, up or down. */
export interface StepField {
  readonly count: number;
  /** [m] */
  readonly mostHeight: number;
  /** Over which one rises or falls [m]. */
  readonly width: number;
}
