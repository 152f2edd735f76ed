import { climbAway } from '../descent/climbAway.ts';
import { orderedPilot, steadyOrders } from '../descent/index.ts';
import { commandedThrust, propellantPerImpulse } from '../descent/thrust.ts';
import { MAX_TILT_DEG } from '../input/controlInput.ts';
import { groundSpan, type Terrain } from '../ground/terrain.ts';
import { goOnTalking } from '../talk/goOnTalking.ts';
import { NOTHING_REVIEWED } from '../review/review.ts';
import { NO_TALK } from '../talk/talk.ts';
import { TICK_DT, TICK_RATE } from '../world/constants.ts';
import type { ControlInput, DescentEvent, DescentSetup, DescentState } from '../world/descent.ts';
import type { EstimateView } from '../estimate/index.ts';
import type { Fault } from '../faults/index.ts';
import { goOnAligning } from './alignment.ts';
import { isCovered } from './attendance.ts';
import { coverSeats } from './coverSeats.ts';
import { FIRST_SETTINGS, throttled, valvesOf } from './engineSettings.ts';
import { flightKnown } from './flightKnown.ts';
import { believedState, createInstruments, stepInstruments, viewInstruments, type Instruments } from './instruments.ts';
import type { Fork, WhatIf } from './fork.ts';
import { eventsAtStart, faultsOf, runEvents } from './runEvents.ts';
import { isLaying } from './turns.ts';
import type { SideLimits } from './liveMargin.ts';
import { NOTHING_SEEN } from './propellantStandIn.ts';
import { NOTHING_WATCHED } from './sensorsStandIn.ts';
import { defectsOf, failuresOf } from './sourceNotes.ts';
import { createMemo } from './memo.ts';
import { firstOrders } from './orders.ts';
import type { PlayedDescent, TableModel } from './tableModel.ts';
import { aimAt, NO_NOTES, type MarkedSpot } from './siteNotes.ts';
import { memberAt, type TableState } from './tableState.ts';
import { createTankSwing, followSwing, type TankSwing } from './tankSwing.ts';
import { SEATS, type TablePlan } from './tableTypes.ts';
import type {
  BelievedArrival,
  CrewEntry,
  JudgedContact,
  JudgedDescent,
  LiveMargin,
  Scorecard,
} from './scorecardTypes.ts';

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
  readonly pilot: (state: DescentState, spot: MarkedSpot | undefined) => ControlInput;
  readonly gauge: (state: DescentState) => LiveMargin;
  readonly sides: (state: DescentState) => SideLimits | undefined;
  flight: DescentState;
  /** The descent as the crew knew it when it was last stepped. */
  known: DescentState;
  /** What the crew knows the descent by, and what it believes now; undefined where it sees the truth. */
  readonly instruments: Instruments | undefined;
  believed: EstimateView | undefined;
  /** Absent where no tank stands upright. */
  readonly swing: TankSwing | undefined;
  /** Worked out when it is first asked for. */
  scorecard: JudgedDescent | undefined;
  /** Flown again with one thing changed; asked for once, elsewhere, when the descent is at rest. */
  forkWanted: boolean;
  /** What was asked after it, in order, as far as it has been flown. */
  whatIfs: readonly WhatIf[];
  fork: Fork | undefined;
}

export function createTable({ plan, model }: { readonly plan: TablePlan; readonly model: TableModel }): Table {
  const { run, start } = layDescent(plan, model);
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
      pace: plan.choice.pace,
      begun: { pace: plan.choice.pace, conduct: 'continuous' },
      stoppedBy: undefined,
      conduct: 'continuous',
      span: spanOf(plan.setup.terrain),
      objectives: (plan.drill?.objectives ?? []).map(({ id }) => id),
      byInstruments: plan.instruments !== undefined,
      ...start,
    },
    run,
  };
}

/** Advances the table by one tick, the descent too when it runs and is not held. Returns what happened in the descent. */
export function stepTable(table: Table): readonly DescentEvent[] {
  const { state, plan } = table;
  state.tick += 1;
  if (state.stoppedBy !== undefined) return [];
  if (state.againAt !== undefined && state.tick >= state.againAt) begin(table);
  goOnTalking(table);
  const { run } = table;
  if (state.stage !== 'descending' || state.held) return [];
  const byStandIn = isCovered(state, 'flying');
  const before = flightKnown(run, state);
  const flown = fly(table, before, byStandIn);
  state.commanded = state.abortedAt === undefined ? flown : climb(table, before);
  if (byStandIn) state.leftByStandIn = { thrust: true, tilt: true };
  const heard = throttled(state.commanded, state.engine);
  state.reckonedBurn += burnInTick(plan.setup, heard);
  const events = run.descent.step(heard, valvesOf(state.engine), state.site.facing ?? 0);
  const flight = run.descent.read();
  noteFacing(state, run.flight, flight);
  run.flight = hasClimbedAway(table, flight) ? { ...flight, phase: 'at rest', outcome: 'aborted' } : flight;
  believe(table);
  const known = flightKnown(run, state);
  run.known = known;
  followSwing(run, known);
  coverSeats(table, known);
  // the contact signal shuts the engine down; whoever wants to hop on opens it again
  if (known.phase === 'contact' && before.phase !== 'contact' && state.engine.cutAtContact) {
    state.commanded = { ...state.commanded, thrustPercent: 0 };
    state.leftByStandIn = { ...state.leftByStandIn, thrust: false };
  }
  runEvents(table);
  if (state.turnEndsAt !== undefined && flight.tick >= state.turnEndsAt) {
    state.turnEndsAt = undefined;
    state.held = true;
  }
  if (run.flight.outcome !== undefined) resolve(state);
  const told = run.instruments === undefined ? events : events.filter(isShownToAll);
  return run.flight.outcome === 'aborted'
    ? [...told, { kind: 'outcome', tick: flight.tick, outcome: 'aborted' }]
    : told;
}

function resolve(state: TableState): void {
  state.stage = 'resolved';
  state.held = false;
  state.finalCrew = crewOf(state);
}

/** Ends the descent where it is: it is over, and judged by nothing that came after. */
export function endDescent({ state, run }: Table): void {
  run.flight = { ...run.flight, phase: 'at rest', outcome: 'stopped' };
  state.stoppedBy = undefined;
  resolve(state);
}

/** Remembers when the last edge came to the right. */
function noteFacing(state: TableState, before: DescentState, { facing, tick }: DescentState): void {
  if ((facing?.steps ?? 0) !== (before.facing?.steps ?? 0)) state.answered = { ...state.answered, faced: tick };
}

/** What is commanded in this tick: by hand, or by what flies the orders; both by the stand-in where nobody is. It flies what is believed. */
function fly({ plan, state, run }: Table, known: DescentState, byStandIn: boolean): ControlInput {
  const { spot } = state.site;
  if (state.orders === undefined) {
    // the pilot is called every tick, so that what it remembers does not depend on who is away
    const piloted = run.pilot(known, spot);
    return byStandIn ? piloted : state.commanded;
  }
  if (byStandIn) state.orders = steadyOrders(known, spot && aimAt(spot), plan.drill?.profile);
  const craft = { engine: plan.setup.lander.engine, gravity: plan.setup.gravity };
  return orderedPilot(state.orders, craft, known, { goesOn: !state.engine.cutAtContact });
}

/** What flies a landing that was given up. */
function climb({ plan }: Table, known: DescentState): ControlInput {
  return climbAway(plan.setup.lander.engine, plan.setup.gravity, known);
}

/** Clear of the ground, and climbing since a second at least. */
function hasClimbedAway({ state }: Table, { vy, height, angle, outcome }: DescentState): boolean {
  if (state.abortedAt === undefined || outcome !== undefined || Math.abs(angle) > UPRIGHT) return false;
  return state.tick - state.abortedAt >= TICK_RATE && vy > CLIMBING && height > CLEAR_HEIGHT;
}

/** An aborted landing is over when it climbs so fast [m/s], so high over the ground [m], leaning no more than this [rad]: a lander that tumbles comes down again. */
const UPRIGHT = Math.PI / 6;
const CLIMBING = 3;
const CLEAR_HEIGHT = 10;

/** What the instruments make of this tick. */
function believe({ state, run }: Table): void {
  const { instruments } = run;
  if (instruments === undefined) return;
  if (state.aligningFor !== undefined && run.believed !== undefined)
    state.aligningFor = goOnAligning(state.aligningFor, instruments.estimate, run.believed);
  const believed = stepInstruments(instruments, run.flight, state.judgments, state.site.facing);
  run.believed = believed;
  if (state.believedContact !== undefined || run.flight.touchdown === undefined) return;
  const { vx, vy, angle, clearance } = believed;
  state.believedContact = { vx, descentRate: -vy, angle, height: clearance };
}

/** Of what happens in a descent by instruments only its end: the rest would tell what is true. */
function isShownToAll(event: DescentEvent): boolean {
  return event.kind === 'outcome' || (event.kind === 'phase' && event.phase === 'at rest');
}

/** Who sits where, in the order of the seats. */
function crewOf(state: TableState): readonly CrewEntry[] {
  return SEATS.flatMap((seat) => {
    const sitter = memberAt(state, seat);
    return sitter === undefined ? [] : [{ seat, name: sitter.name }];
  });
}

/** What the descent came to, whoever flew it and whatever they believed. */
export function judgeDescent({ model, run, plan, state }: Table): JudgedDescent {
  return model.scorecard(run.flight, { ...plan.setup, faults: faultsOf(state.failures) });
}

/** What the table says of the descent that has ended; undefined before. Its limits are searched once, at the first call: some tenths of a second. */
export function scorecardOf(table: Table): Scorecard | undefined {
  const { state, run } = table;
  if (state.stage !== 'resolved') return undefined;
  run.scorecard ??= judgeDescent(table);
  const { scorecard } = run;
  const { believedContact, failures, answered, judgments, doubts, named, namings, finalCrew } = state;
  const from = [scorecard, believedContact, failures, answered, judgments, doubts, named, namings, finalCrew];
  return laidCard(run, from, () => completeCard(table, scorecard));
}

const laidCard = createMemo<Run, Scorecard>();

/** With what is known of the crew. */
function completeCard({ state, run }: Table, scorecard: JudgedDescent): Scorecard {
  const belief = state.believedContact && judgeBelief(state.believedContact, scorecard.contacts[0]);
  const failures = failuresOf(state, run.flight.tick);
  const defects = defectsOf(state, run.flight.tick);
  const known = {
    ...(belief && { belief }),
    ...(failures.length > 0 && { failures }),
    ...(defects.length > 0 && { defects }),
    ...cardFacing(state, run.flight),
  };
  return { ...scorecard, ...known, crew: state.finalCrew };
}

function cardFacing({ answered }: TableState, { facing }: DescentState): Pick<Scorecard, 'facing'> {
  if (facing === undefined || answered.facing === undefined) return {};
  const doneAfter = answered.faced === undefined ? {} : { doneAfter: answered.faced / TICK_RATE };
  return { facing: { steps: facing.steps, orderedAfter: answered.facing / TICK_RATE, ...doneAfter } };
}

/** What the crew believed, held against the limit of the contact as it was. */
function judgeBelief(
  believed: Omit<BelievedArrival, 'utilisation'>,
  first: JudgedContact | undefined,
): BelievedArrival {
  const tip = first?.limit?.tip ?? 0;
  return tip > 0 ? { ...believed, utilisation: Math.abs(believed.vx) / tip } : believed;
}

/** Puts a new descent of the same plan on the table and lets it run. The one before stays in the record. */
export function begin(table: Table): void {
  const { plan, model, state } = table;
  // the descent laid out at opening has not been stepped yet: it is the one to fly
  if (state.descents > 0) {
    const { run, start } = layDescent(plan, model);
    table.run = run;
    Object.assign(state, start);
  }
  state.begun = { pace: state.pace, conduct: state.conduct };
  state.descents += 1;
  state.stage = 'descending';
  state.held = isLaying(state);
  state.members = state.members.map((member) => ({ ...member, letIn: true }));
}

/** A descent from its start, with what of the state belongs to it. */
function layDescent(plan: TablePlan, model: TableModel) {
  const events = eventsAtStart(plan);
  const run = layRun(plan, model, faultsOf(events.failures));
  return { run, start: { ...atStart(plan, run), ...events } };
}

function atStart(plan: TablePlan, run: Run) {
  const { setup, choice } = plan;
  const commanded = firstCommand(setup, run.flight);
  return {
    abortedAt: undefined,
    commanded,
    orders:
      choice.mode === 'by orders' ? firstOrders(flightKnown(run, { commanded, engine: FIRST_SETTINGS })) : undefined,
    leftByStandIn: { thrust: false, tilt: false },
    engine: FIRST_SETTINGS,
    site: NO_NOTES,
    reckonedBurn: 0,
    answered: {},
    againAt: undefined,
    aligningFor: undefined,
    judgments: {},
    named: {},
    namings: {},
    talk: NO_TALK,
    review: NOTHING_REVIEWED,
    watch: NOTHING_WATCHED,
    propellantWatch: NOTHING_SEEN,
    legWatch: undefined,
    doubts: {},
    believedContact: undefined,
    finalCrew: [],
    laid: [],
    turnEndsAt: undefined,
  } satisfies Partial<TableState>;
}

function layRun(plan: TablePlan, model: TableModel, faults: readonly Fault[]): Run {
  const descent = model.createDescent(plan);
  descent.setFaults(faults);
  const flight = descent.read();
  const pilot = model.createPilot(plan);
  const instruments = plan.instruments && createInstruments(plan.instruments, { ...plan.setup, faults }, flight);
  const believed = instruments && viewInstruments(instruments, {});
  // the crew reads its margin off the ground that it knows
  const ground = instruments === undefined ? withKnownLegs(plan) : withMap(plan, instruments);
  const gauge = model.createMarginGauge(ground);
  const sides = model.createSideGauge(ground);
  const known = instruments && believed ? believedState(instruments, believed, flight.commanded) : flight;
  const swing = createTankSwing(plan.setup.lander);
  const atRest = { scorecard: undefined, forkWanted: false, fork: undefined, whatIfs: [] };
  return { descent, pilot, gauge, sides, flight, known, instruments, believed, swing, ...atRest };
}

/** What a tick burns at the thrust that is commanded [kg]: nothing of how the engine follows is in it. */
function burnInTick({ lander: { engine } }: DescentSetup, { thrustPercent }: ControlInput): number {
  return commandedThrust(engine, thrustPercent) * propellantPerImpulse(engine) * TICK_DT;
}

/** Whole meters between the ends of the ground. */
function spanOf(terrain: Terrain): TableState['span'] {
  const [first, last] = groundSpan(terrain);
  return { least: Math.ceil(first), most: Math.floor(last) };
}

/** By instruments the ground is that of the map, and the legs are taken to be as built: what the crew knows no better. */
function withMap(plan: TablePlan, { map }: Instruments): TablePlan {
  return { ...plan, setup: { ...plan.setup, terrain: map.terrain } };
}

/** Where everything is true, a table of limits for legs as built says nothing of others. */
function withKnownLegs(plan: TablePlan): TablePlan {
  const { limits: _asBuilt, ...rest } = plan;
  return (plan.setup.faults ?? []).some(({ source }) => source === 'legs') ? rest : plan;
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
