import type { OpenLedger } from './ledger.ts';

/** What has happened so far in a run. Times are whole steps. */
export interface RunCourse {
  step: number;
  /** Steps really computed: a free flight counts one. */
  computed: number;
  /** The budget of steps was used up before anything else ended the run. */
  outOfSteps: boolean;
  firstContact: number | undefined;
  atRest: boolean;
  /** Has too little energy to tip: final. */
  staysUp: boolean;
  /** Moves too little for anything to change. */
  quiet: boolean;
  /** Cannot tip and has for a while only rocked. */
  onlyRocks: boolean;
  /** Set by the verdict: level unit vector in which the lander falls, ground frame. */
  tipDirection: readonly [number, number, number] | undefined;
  /** Outward over the edge where the plumb line left the footprint last; undefined inside. */
  wentOver: readonly [number, number, number] | undefined;
  /** Of the last look; see plumbMargin. */
  readonly margin: Float64Array;
  lastMargin: number;
  leastMargin: number;
  leastMarginStep: number;
  /** It no longer counts what margin there is: a verdict is all that is asked for, and has come. */
  marginIsFinal: boolean;
  restLooks: number;
  /** Step since which kinetic energy has been low and no pad has slid far, and how far the pads had slid in all then [m]. */
  quietSince: number;
  quietSlide: number;
  /** Step since which legs and pads have not given way nor slid far, and how far they had in all then [m]. */
  unchangedSince: number;
  changed: number;
  unchangedSlide: number;
  /** Of the hull from the ground, now and least so far [m]. */
  gap: number;
  clearance: number;
  readonly ledger: OpenLedger | undefined;
}
