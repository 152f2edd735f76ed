import type { Fault } from '../faults/index.ts';
import type { ControlInput, DescentEvent, DescentSetup, DescentState, Valves } from '../world/descent.ts';
import type { DescentMark } from '../world/markDescent.ts';
import type { SideLimits } from './liveMargin.ts';
import type { MarkedSpot } from './siteNotes.ts';
import type { LiveMargin, JudgedDescent } from './scorecardTypes.ts';
import type { TablePlan } from './tableTypes.ts';

/**
 * What the authority needs from the rest of the engine. `playedModel` is the real one; a test may put a simpler world
 * under the same rules.
 */
export interface TableModel {
  createDescent(plan: TablePlan): PlayedDescent;
  /** What the stand-in at Flying commands in this state: one call a tick, from the first tick on. */
  createPilot(plan: TablePlan): (state: DescentState, spot: MarkedSpot | undefined) => ControlInput;
  createMarginGauge(plan: TablePlan): (state: DescentState) => LiveMargin;
  createSideGauge(plan: TablePlan): (state: DescentState) => SideLimits | undefined;
  /** All but who flew it. */
  scorecard(final: DescentState, setup: DescentSetup): JudgedDescent;
}

/** One descent in progress, whatever computes it. */
export interface PlayedDescent {
  /** Advances by one tick, turning toward the edge that is ordered; returns what happened in it. */
  step(input: ControlInput, valves: Valves, facing: number): readonly DescentEvent[];
  /** What is wrong with the lander from the next tick on: all of it, each for the ticks that it says. */
  setFaults(faults: readonly Fault[]): void;
  /** Plain data, new for each tick. */
  read(): DescentState;
  /** Everything that decides the next tick. */
  mark(): DescentMark;
}
