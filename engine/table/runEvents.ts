import { propellantPerImpulse } from '../descent/thrust.ts';
import {
  dueRows,
  failuresAfter,
  firstEvents,
  firstFailures,
  sent,
  skipped,
  type EventFacts,
  type EventRow,
  type Failure,
} from '../drill/index.ts';
import type { Fault, VehiclePart } from '../faults/index.ts';
import type { Source } from '../sensors/index.ts';
import { TICK_DT } from '../world/constants.ts';
import { tell } from '../talk/alerts.ts';
import { isCarriedOut } from './responses.ts';
import type { Table } from './table.ts';
import type { TablePlan } from './tableTypes.ts';

/** The event list of a drill, as the table runs it: once a tick of the descent, on what is true. */

/** What a descent of this plan begins with. */
export function eventsAtStart({ drill, setup, seed }: TablePlan) {
  return {
    events: drill && firstEvents(drill, seed),
    failures: firstFailures(setup.faults ?? [], drill?.truth.faults ?? []),
  };
}

/** Sends what is due. A contingency that is due and not needed any more is put away. */
export function runEvents(table: Table): void {
  const { drill } = table.plan;
  const { state } = table;
  if (drill === undefined || state.events === undefined) return;
  for (const row of dueRows(drill, state.events, factsOf(table))) {
    const needless = row.unless !== undefined && isCarriedOut(table, drill, row.unless);
    if (needless) state.events = skipped(state.events, row.id, 'not needed');
    else sendRow(table, row);
  }
}

/** Lets an inject take effect from the next tick of the descent on. */
export function sendRow(table: Table, row: EventRow): void {
  const { state, run } = table;
  if (state.events === undefined) return;
  const { tick } = run.flight;
  state.events = sent(state.events, row, run.flight);
  const before = state.failures;
  for (const effect of row.effects) {
    state.failures = failuresAfter(state.failures, effect, tick + 1);
    if (effect.do === 'tell' && effect.level !== undefined)
      tell(table, { text: effect.text, level: effect.level, to: effect.to, ...wantedBy(table, row) });
  }
  if (state.failures !== before) handFailures(table);
}

/** For want of which response a contingency is sent; nothing where only people can tell, or where it was carried out already and is sent by hand even so. */
function wantedBy(table: Table, { unless }: EventRow): { readonly until?: string } {
  const { drill } = table.plan;
  if (unless === undefined || drill === undefined || isCarriedOut(table, drill, unless)) return {};
  const wanted = drill.events.flatMap(({ responses }) => responses).find(({ id }) => id === unless);
  return wanted === undefined || wanted.seen.by === 'evaluator' ? {} : { until: unless };
}

/** Nothing fails in this source, or is wrong with this part of the lander, from the next tick on. */
export function spare(table: Table, what: Source | VehiclePart): void {
  const { state } = table;
  const left = state.failures.filter(({ fault }) => fault.source !== what);
  if (left.length === state.failures.length) return;
  state.failures = left;
  handFailures(table);
}

/** What is faulty is told to whatever it acts on. */
function handFailures({ run, state }: Pick<Table, 'run' | 'state'>): void {
  const faults = faultsOf(state.failures);
  run.descent.setFaults(faults);
  if (run.instruments !== undefined) run.instruments.faults = faults;
}

export function faultsOf(failures: readonly Failure[]): readonly Fault[] {
  return failures.map(({ fault }) => fault);
}

function factsOf({ plan: { setup }, run: { flight } }: Table): EventFacts {
  const { engine } = setup.lander;
  const perSecond = flight.mass * setup.gravity * propellantPerImpulse(engine);
  const first = flight.touchdown?.tick;
  return {
    tick: flight.tick,
    height: flight.height,
    quantities: {
      descentRate: -flight.vy,
      drift: Math.abs(flight.vx),
      leanDeg: (Math.abs(flight.angle) * 180) / Math.PI,
      propellantSeconds: flight.propellant / perSecond,
      sinceContact: first === undefined ? 0 : (flight.tick - first) * TICK_DT,
    },
  };
}
