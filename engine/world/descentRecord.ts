import type { LagStep } from '../descent/thrust.ts';
import type { Fault } from '../faults/fault.ts';
import type { PlanarFeet } from '../touchdown/planarFeet.ts';
import type { LegCondition } from '../touchdown/touchdownCase.ts';
import type { SteadyForces } from './advanceMotion.ts';
import type {
  Arrival,
  ControlInput,
  DescentEvent,
  DescentSetup,
  Outcome,
  Phase,
  TouchdownState,
  Valves,
} from './descent.ts';
import type { Heading } from './facings.ts';
import type { HullBody } from './hullBody.ts';
import type { Bulk, Motion } from './motion.ts';
import type { SectionLander } from './sectionLander.ts';

/**
 * One descent in progress. Opaque outside this folder: make it with `createDescent`, move it with `stepDescent`, look at
 * it with `readDescent`. Everything that decides the next tick is in here.
 */
export interface Descent {
  readonly setup: DescentSetup;
  /** Laid out anew whenever another edge has come to the right. */
  section: SectionLander;
  /** Undefined while nobody has ordered a turn. */
  heading: Heading | undefined;
  readonly hull: HullBody;
  readonly lag: LagStep;
  /** Those of the setup, and those dealt since. */
  faults: readonly Fault[];
  tick: number;
  phase: Phase;
  readonly motion: Motion;
  /** Motion at the start of the physics step in which something first touched in this tick, else of its last; and of the present one. */
  readonly before: Motion;
  readonly stepStart: Motion;
  readonly bulk: Bulk;
  readonly forces: SteadyForces;
  /** [N] */
  thrust: number;
  /** [kg] */
  propellant: number;
  commanded: ControlInput;
  /** Of this tick. */
  valves: Valves;
  feet: PlanarFeet;
  /** In which condition the legs are that are not as built. */
  legs: readonly LegCondition[];
  /** The present physics step is taken in the short steps of the feet. */
  legsAwake: boolean;
  readonly contact: ContactHistory;
  /** What happened in the present tick; empty between ticks. */
  readonly events: DescentEvent[];
  /** The contacts so far; one is replaced by a new one when there are MAX_ARRIVALS. */
  readonly arrivals: Arrival[];
  touchdown: TouchdownState | undefined;
  outcome: Outcome | undefined;
}

/** What has happened to the gear and the hull so far. Changed in place by the step. */
export interface ContactHistory {
  /** Ticks since each leg last bore load; a foot comes down anew only after FOOT_CLEAR_TICKS. */
  readonly clear: number[];
  /** Which feet were down at the end of some physics step of this tick. */
  readonly touched: boolean[];
  /** Number of stages used up, by leg. */
  readonly stages: number[];
  /** Ticks since anything of the lander last touched the ground, and whether the engine burned in them. */
  offGround: number;
  burned: boolean;
  hullDown: boolean;
  /** Tick of the first contact of the present touchdown; −1 while flying. */
  firstTick: number;
  bothDown: boolean;
  /** Consecutive ticks of lying still. */
  stillTicks: number;
  /** Tanks ran empty in flight above the final drop. */
  ranDry: boolean;
  /** Tick of the touchdown when it was a crash, see CRASH_ENERGY; −1 otherwise. */
  crashTick: number;
  /** Tick since which the hull lies on the ground past balance; −1 while it does not. */
  lyingSince: number;
  /** The body passed its balance point, and not since came back; −1 to the left, +1 to the right, 0 not. */
  pastBalance: -1 | 0 | 1;
}
