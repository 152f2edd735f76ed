import { assert } from '../assert.ts';
import { MAX_TILT_DEG } from '../input/controlInput.ts';
import { accept, type Result } from '../result.ts';
import type { ControlInput, DescentEvent, DescentSetup, DescentState } from '../world/descent.ts';
import type { Recording } from '../replay/recording.ts';
import { attendedControls, controlsNow, memberAt } from './controls.ts';
import type { PlayedDescent, TableModel } from './tableModel.ts';
import {
  SEATS,
  type CrewEntry,
  type HeldControls,
  type LiveMargin,
  type MemberId,
  type Refusal,
  type Scorecard,
  type Seat,
  type Stage,
  type TablePlan,
} from './tableTypes.ts';

/**
 * The authority over one table: who may ask for what, the stages, the descent, and what each member is shown.
 *
 * It never looks at a clock. `stepTable` is called once a tick; commands act between two ticks. The same plan and the same
 * commands between the same ticks give the same bits, in the browser of one player and on the server for a crew.
 * Everything outside this folder treats a Table as opaque and reads it through `viewTable`.
 */
export interface Table {
  readonly plan: TablePlan;
  readonly model: TableModel;
  /** Ticks since the table was opened, whether or not a descent runs. */
  tick: number;
  stage: Stage;
  held: boolean;
  /** In order of joining. */
  members: Member[];
  /** How many ever joined; names the next member. */
  joined: number;
  run: Run;
  scorecard: Scorecard | undefined;
}

export interface Member {
  readonly id: MemberId;
  readonly name: string;
  seat: Seat | undefined;
  /** Tick of the table at which the line dropped; undefined while connected. */
  absentSince: number | undefined;
}

/** One descent from its start: its world, who stands in, and its latest reading. */
export interface Run {
  readonly descent: PlayedDescent;
  readonly pilot: (state: DescentState) => ControlInput;
  readonly gauge: (state: DescentState) => LiveMargin;
  flight: DescentState;
  margin: LiveMargin;
  commanded: ControlInput;
  /** Controls that the stand-in commanded last: nobody has set them since. */
  leftByStandIn: HeldControls;
}

export function createTable({ plan, model }: { readonly plan: TablePlan; readonly model: TableModel }): Table {
  return {
    plan,
    model,
    tick: 0,
    stage: 'gathering',
    held: false,
    members: [],
    joined: 0,
    run: startRun(plan, model),
    scorecard: undefined,
  };
}

/** Advances the table by one tick, the descent too when it runs and is not held. Returns what happened in the descent. */
export function stepTable(table: Table): readonly DescentEvent[] {
  table.tick += 1;
  if (table.stage !== 'descending' || table.held) return [];
  const { run } = table;
  const attended = attendedControls(table);
  run.commanded = controlsNow(run, attended);
  const { thrust, tilt } = run.leftByStandIn;
  if (!attended.thrust || !attended.tilt)
    run.leftByStandIn = { thrust: thrust || !attended.thrust, tilt: tilt || !attended.tilt };
  const events = run.descent.step(run.commanded);
  // the contact signal shuts the engine down; whoever wants to hop on opens it again
  if (events.some((event) => event.kind === 'phase' && event.phase === 'contact')) {
    run.commanded = { ...run.commanded, thrustPercent: 0 };
    run.leftByStandIn = { ...run.leftByStandIn, thrust: false };
  }
  run.flight = run.descent.read();
  run.margin = run.gauge(run.flight);
  if (run.flight.outcome !== undefined) {
    table.stage = 'resolved';
    table.scorecard = { ...table.model.scorecard(run.flight, table.plan.setup), crew: crewOf(table) };
  }
  return events;
}

/** Who sits where, in the order of the seats. */
function crewOf(table: Table): readonly CrewEntry[] {
  return SEATS.flatMap((seat) => {
    const sitter = memberAt(table, seat);
    return sitter === undefined ? [] : [{ seat, name: sitter.name }];
  });
}

/** The descent that is on the table, as it went so far; it replays to the bit, on any machine. */
export function recordingOf(table: Table): Recording {
  return table.run.descent.recording();
}

/** Puts a new descent of the same plan on the table and lets it run. */
export function beginDescent(table: Table): Result<void, Refusal> {
  // the descent laid out at opening has not been stepped yet: it is the one to fly
  if (table.run.flight.tick > 0) table.run = startRun(table.plan, table.model);
  assert(table.run.flight.tick === 0, 'a descent begins with no tick behind it');
  table.scorecard = undefined;
  table.held = false;
  table.stage = 'descending';
  return accept(undefined);
}

function startRun(plan: TablePlan, model: TableModel): Run {
  const descent = model.createDescent(plan);
  const pilot = model.createPilot(plan.setup);
  const gauge = model.createMarginGauge(plan);
  const flight = descent.read();
  return {
    descent,
    pilot,
    gauge,
    flight,
    margin: gauge(flight),
    commanded: firstCommand(plan.setup, flight),
    leftByStandIn: { thrust: false, tilt: false },
  };
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
