import type { ControlInput } from '../world/descent.ts';

/**
 * A recorded descent: what it started from and every input. Stepping the same setup with the same inputs gives the same
 * bits; the marks along the way prove it.
 */

/** The only format that is read. */
export const RECORDING_FORMAT = 'kilter-recording/1';

/**
 * Of everything that decides the bits of a descent. Raised by hand with every change that moves a golden hash; a recording
 * of another revision is refused, since there is no way to play it back truly.
 */
export const PHYSICS_REVISION = 3;

/** Ticks between two marks: half a second. */
export const MARK_EVERY = 30;

export interface Recording {
  readonly format: typeof RECORDING_FORMAT;
  readonly physics: number;
  /** Ticks a second. */
  readonly tickRate: number;
  readonly plan: RecordedPlan;
  /** In order; each stands for `ticks` ticks of one input. */
  readonly inputs: readonly InputRun[];
  /** At the start, every MARK_EVERY ticks, and at the end. */
  readonly marks: readonly Mark[];
}

/** Where the setup comes from, and what it was to the bit. */
export interface RecordedPlan {
  readonly landerId: string;
  readonly siteId: string;
  readonly worldId: string;
  readonly seed: number;
  /** Of the whole setup, from `hashSetup`. */
  readonly setupHash: string;
}

export interface InputRun extends ControlInput {
  readonly ticks: number;
}

/** The state after a tick: its hash, and the numbers that a reader wants to compare. */
export interface Mark {
  readonly tick: number;
  readonly hash: string;
  /** In the order of MARKED_FIELDS, full width. */
  readonly values: readonly number[];
}

export const MARKED_FIELDS = [
  'x',
  'y',
  'angle',
  'vx',
  'vy',
  'rate',
  'thrust',
  'propellant',
  'leftStroke',
  'rightStroke',
] as const;
export type MarkedField = (typeof MARKED_FIELDS)[number];
