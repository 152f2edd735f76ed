import type { HeldControls, PredictedMargin, TableView } from '../../engine/table/index.ts';
import { plainChoice } from './plainChoice.ts';
import type { DescentState } from '../../engine/world/index.ts';

/** Both controls, as a pilot alone holds them. */
export const BOTH: HeldControls = { thrust: true, tilt: true };
/** Thrust that holds the speed [%]. */
export const HOVER = 34;

const INSIDE: PredictedMargin = {
  limit: 1.5,
  speedMargin: 1.5,
  utilisation: 0,
  band: 'desired',
  callout: 'inside',
  x: 0,
  seconds: 10,
  descentRate: 1,
  slope: 0,
};

/** A view from Flying, 30 m up and sinking at 3 m/s, with what a test wants otherwise. */
export function viewOf(
  flight: Partial<DescentState>,
  more: { readonly thrustPercent?: number; readonly margin?: Partial<PredictedMargin> } = {},
): TableView {
  const commanded = { thrustPercent: more.thrustPercent ?? HOVER, tiltDeg: 0 };
  return {
    stage: 'descending',
    held: false,
    locked: false,
    conduct: 'continuous',
    dealt: [],
    aborting: false,
    you: {
      id: 'm1',
      name: 'Wren',
      seat: 'flying',
      holds: BOTH,
      mayTakeSeat: true,
      decides: true,
      runs: true,
      role: 'crew',
      ready: false,
    },
    seats: [],
    watching: [],
    waiting: [],
    others: [],
    engine: { ceilingPercent: 100, cutOff: 'not armed', cutAtContact: true, lineShut: false },
    site: { ground: 'as mapped' },
    named: [],
    plan: {
      title: 'First landing',
      landerId: 'trivet',
      siteId: 'saddlers-bench',
      worldId: 'moon',
      seed: 1,
      choice: plainChoice,
    },
    drawnIn: 'ink',
    rejected: [],
    commanded,
    pace: 1,
    talk: { calls: [], openCount: 0, open: [], question: 'go', alerts: [], log: [] },
    margin: { predicted: { ...INSIDE, ...more.margin }, tiltLeft: 0.7 },
    flight: {
      tick: 600,
      phase: 'terminal descent',
      x: 0,
      y: 30,
      vx: 0,
      vy: -3,
      angle: 0,
      rate: 0,
      thrust: 3000,
      propellant: 100,
      mass: 2000,
      height: 30,
      slope: 0,
      legs: [],
      commanded,
      contacts: [],
      ...flight,
    },
  };
}
