import { assert } from '../assert.ts';
import { controlsOf } from './controls.ts';
import { SOURCES } from '../sensors/index.ts';
import { viewReview } from '../review/viewReview.ts';
import { viewTalk } from '../talk/viewTalk.ts';
import { TICK_RATE } from '../world/constants.ts';
import { paceNow } from './pace.ts';
import { maySit } from './permissions.ts';
import { scorecardOf, type Table } from './table.ts';
import { isPencil, viewDisplay } from './viewDisplay.ts';
import { decider } from './attendance.ts';
import { viewConduct, viewDrill } from './viewDrill.ts';
import { facilitatorOf, findMember, isControl, memberAt, type Member, type TableState } from './tableState.ts';
import { SEATS, type MemberId, type Seat, type TablePlan } from './tableTypes.ts';
import type { HeldControls, OtherView, SeatView, TableView, YouView } from './viewTypes.ts';

/**
 * What one member is shown of the state now: what it leaves out of that reaches nobody. The events that `stepTable` returns go to all members alike.
 * Plain data; the parts that did not change since the last tick may be the same objects.
 */
export function viewTable(table: Table, id: MemberId): TableView {
  const member = findMember(table.state, id);
  assert(member !== undefined, `there is a member ${id} at this table`);
  return viewOf(table, member);
}

/** What is shown at a seat now, whoever sits there, or nobody; without one, to the control side. For looking back: it is sent to nobody. */
export function viewAt(table: Table, seat: Seat | undefined): TableView {
  const role = seat === undefined ? 'evaluator' : 'crew';
  const nobody: Member = { id: '', name: '', role, ready: true, seat, absentSince: undefined, letIn: true };
  return viewOf(table, (seat && memberAt(table.state, seat)) ?? nobody);
}

function viewOf(table: Table, member: Member): TableView {
  const { state, run, plan } = table;
  const scorecard = scorecardOf(table);
  const review = viewReview(table, member);
  return {
    stage: state.stage,
    held: state.held,
    aborting: state.abortedAt !== undefined && state.stage === 'descending',
    ...viewSettings(state),
    you: viewYou(state, member),
    others: state.members.filter((other) => other !== member).map(viewOther),
    seats: SEATS.map((seat) => viewSeat(state, seat)),
    watching: state.members.filter((other) => other !== member && isWatching(other)).map(({ name }) => name),
    waiting: state.members
      .filter((other) => isWatching(other) && !maySit(state, other))
      .map(({ id, name }) => ({ id, name })),
    plan: viewPlan(plan, isPencil(table) && !isControl(member)),
    ...viewConduct(table, member),
    ...viewDrill(table, member),
    ...viewDisplay(table, isControl(member) ? SEATS : member.seat === undefined ? [] : [member.seat]),
    commanded: state.commanded,
    ...(state.orders !== undefined && { orders: state.orders }),
    pace: state.pace,
    talk: viewTalk(state, member),
    ...(review !== undefined && { review }),
    ...(scorecard === undefined ? {} : { scorecard }),
    ...(state.stage === 'resolved' && run.fork !== undefined && { fork: run.fork }),
  };
}

/** The seed draws the ground: whoever must not know the one must not know the other. */
function viewPlan(plan: TablePlan, isHidden: boolean): TableView['plan'] {
  const { title, landerId, siteId, worldId, choice } = plan;
  const seed = isHidden ? 0 : plan.seed;
  return { title, landerId, siteId, worldId, seed, choice: { ...choice, seed: isHidden ? 0 : choice.seed } };
}

/** What seats have set and said: the whole crew is told. */
function viewSettings(state: TableState): Pick<TableView, 'engine' | 'site' | 'named' | 'aligning' | 'startingIn'> {
  const { engine, site, aligningFor, againAt, tick } = state;
  return {
    engine,
    site,
    named: SOURCES.flatMap((source) => {
      const cause = state.named[source] ?? 'nothing';
      return cause === 'nothing' ? [] : [{ source, cause }];
    }),
    ...(aligningFor !== undefined && { aligning: aligningFor / TICK_RATE }),
    ...(againAt !== undefined && { startingIn: (againAt - tick) / (TICK_RATE * paceNow(state)) }),
  };
}

function viewYou(state: TableState, member: Member): YouView {
  const { id, name, role, ready, seat } = member;
  const holds = controlsOf(seat);
  const standInLeft = leftToHolder(state, holds);
  return {
    id,
    name,
    role,
    ready,
    ...(seat === undefined ? {} : { seat }),
    holds,
    decides: decider(state) === member,
    runs: member === (facilitatorOf(state) ?? decider(state)),
    mayTakeSeat: role === 'crew' && maySit(state, member),
    ...(standInLeft.thrust || standInLeft.tilt ? { standInLeft } : {}),
  };
}

/** What the stand-in last commanded, of that which a member holds while a descent runs. */
function leftToHolder({ stage, leftByStandIn }: TableState, holds: HeldControls): HeldControls {
  const { thrust, tilt } = leftByStandIn;
  const isFlown = stage === 'descending';
  return { thrust: isFlown && thrust && holds.thrust, tilt: isFlown && tilt && holds.tilt };
}

function viewOther({ id, name, role, ready, absentSince, seat }: Member): OtherView {
  return { id, name, role, ready, connected: absentSince === undefined, ...(seat !== undefined && { seat }) };
}

function isWatching({ role, seat, absentSince }: Member): boolean {
  return role === 'crew' && seat === undefined && absentSince === undefined;
}

function viewSeat(state: TableState, seat: Seat): SeatView {
  const sitter = memberAt(state, seat);
  return {
    seat,
    ...(sitter === undefined ? {} : { name: sitter.name }),
    connected: sitter !== undefined && sitter.absentSince === undefined,
    holds: controlsOf(seat),
  };
}
