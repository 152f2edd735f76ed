import { MAX_TILT_DEG } from '../input/controlInput.ts';
import type { ControlInput, DescentEvent, DescentSetup, DescentState } from '../world/descent.ts';
import { attendedControls, controlsNow } from './controls.ts';
import type { PlayedDescent, TableModel } from './tableModel.ts';
import { memberAt, type TableState } from './tableState.ts';
import { SEATS, type CrewEntry, type LiveMargin, type Scorecard, type TablePlan } from './tableTypes.ts';

/**
 * The authority over one table. It never looks at a clock: `stepTable` is called once a tick, and what comes from outside is judged (`judge.ts`), becomes
 * an entry, and is carried out between two ticks (`applyEntry`). The same plan and the same entries at the same ticks give the same bits, in the
 * browser of one player, on the server for a crew, and from a record years later. Everything outside this folder reads a table through `viewTable`.
 */
export interface Table {
  readonly plan: TablePlan;
  readonly model: TableModel;
  readonly state: TableState;
  run: Run;
}

/** One descent from its start: its world, who stands in, and what follows from its latest reading. */
export interface Run {
  readonly descent: PlayedDescent;
  readonly pilot: (state: DescentState) => ControlInput;
  readonly gauge: (state: DescentState) => LiveMargin;
  flight: DescentState;
  margin: LiveMargin;
  /** Worked out when it is first asked for. */
  scorecard: Omit<Scorecard, 'crew'> | undefined;
}

export function createTable({ plan, model }: { readonly plan: TablePlan; readonly model: TableModel }): Table {
  const run = layRun(plan, model);
  return {
    plan,
    model,
    state: {
      tick: 0,
      stage: 'gathering',
      held: false,
      members: [],
      joined: 0,
      descents: 0,
      commanded: firstCommand(plan.setup, run.flight),
      leftByStandIn: { thrust: false, tilt: false },
      finalCrew: [],
    },
    run,
  };
}

/** Advances the table by one tick, the descent too when it runs and is not held. Returns what happened in the descent. */
export function stepTable(table: Table): readonly DescentEvent[] {
  const { state, run } = table;
  state.tick += 1;
  if (state.stage !== 'descending' || state.held) return [];
  const attended = attendedControls(state);
  // the pilot is called every tick, so that what it remembers does not depend on who is away
  state.commanded = controlsNow(state.commanded, run.pilot(run.flight), attended);
  const { thrust, tilt } = state.leftByStandIn;
  if (!attended.thrust || !attended.tilt)
    state.leftByStandIn = { thrust: thrust || !attended.thrust, tilt: tilt || !attended.tilt };
  const events = run.descent.step(state.commanded);
  // the contact signal shuts the engine down; whoever wants to hop on opens it again
  if (events.some((event) => event.kind === 'phase' && event.phase === 'contact')) {
    state.commanded = { ...state.commanded, thrustPercent: 0 };
    state.leftByStandIn = { ...state.leftByStandIn, thrust: false };
  }
  run.flight = run.descent.read();
  run.margin = run.gauge(run.flight);
  if (run.flight.outcome !== undefined) {
    state.stage = 'resolved';
    state.finalCrew = crewOf(state);
  }
  return events;
}

/** Who sits where, in the order of the seats. */
function crewOf(state: TableState): readonly CrewEntry[] {
  return SEATS.flatMap((seat) => {
    const sitter = memberAt(state, seat);
    return sitter === undefined ? [] : [{ seat, name: sitter.name }];
  });
}

/** What the table says of the descent that has ended; undefined before. Its limits are searched once, at the first call: some tenths of a second. */
export function scorecardOf({ state, run, model, plan }: Table): Scorecard | undefined {
  if (state.stage !== 'resolved') return undefined;
  run.scorecard ??= model.scorecard(run.flight, plan.setup);
  return { ...run.scorecard, crew: state.finalCrew };
}

/** Lays out the descent anew, from its start. */
export function startRun(table: Table): void {
  const { plan, model, state } = table;
  table.run = layRun(plan, model);
  state.commanded = firstCommand(plan.setup, table.run.flight);
  state.leftByStandIn = { thrust: false, tilt: false };
}

function layRun(plan: TablePlan, model: TableModel): Run {
  const descent = model.createDescent(plan);
  const gauge = model.createMarginGauge(plan);
  const flight = descent.read();
  const pilot = model.createPilot(plan.setup);
  return { descent, pilot, gauge, flight, margin: gauge(flight), scorecard: undefined };
}

/** What stands until someone commands otherwise: the engine carries the weight, the attitude is kept. */
function firstCommand({ lander, gravity }: DescentSetup, { mass, angle }: DescentState): ControlInput {
  const percent = Math.round((100 * mass * gravity) / lander.engine.maxThrust);
  const degrees = Math.round((180 * angle) / Math.PI) + 0;
  return {
    thrustPercent: Math.min(100, percent),
    tiltDeg: Math.max(-MAX_TILT_DEG, Math.min(MAX_TILT_DEG, degrees)),
  };
}
