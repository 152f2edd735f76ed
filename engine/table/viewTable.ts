import { assert } from '../assert.ts';
import { SOURCES } from '../sensors/index.ts';
import { viewReview } from '../review/viewReview.ts';
import { viewTalk } from '../talk/viewTalk.ts';
import { TICK_RATE } from '../world/constants.ts';
import { createMemo } from './memo.ts';
import { paceNow } from './pace.ts';
import { scorecardOf, type Table } from './table.ts';
import { isPencil, viewFlight, viewOwnReadings } from './viewDisplay.ts';
import { viewBrief, viewOwnDrill, viewStop, viewTurn } from './viewDrill.ts';
import { viewPeople, viewSeats } from './viewPeople.ts';
import { findMember, isControl, memberAt, type Member, type TableState } from './tableState.ts';
import { SEATS, type MemberId, type NamedSource, type Seat, type TablePlan } from './tableTypes.ts';
import type { CommonView, OwnView, TableView } from './viewTypes.ts';

/**
 * What one member is shown of the state now: what it leaves out of that reaches nobody. The events that `stepTable` returns go to all members alike.
 * Plain data, never written into; the parts that did not change since the last tick may be the same objects.
 */
export function viewTable(table: Table, id: MemberId): TableView {
  return { ...viewCommon(table), ...viewOwn(table, id) };
}

/** What is shown at a seat now, whoever sits there, or nobody; without one, to the control side. For looking back: it is sent to nobody. */
export function viewAt(table: Table, seat: Seat | undefined): TableView {
  const role = seat === undefined ? 'evaluator' : 'crew';
  const nobody: Member = { id: '', name: '', role, ready: true, seat, absentSince: undefined, letIn: true };
  return { ...viewCommon(table), ...viewFor(table, (seat && memberAt(table.state, seat)) ?? nobody) };
}

/** The part of it that all members are shown alike. */
export function viewCommon(table: Table): CommonView {
  const { state, run } = table;
  const scorecard = scorecardOf(table);
  return {
    stage: state.stage,
    held: state.held,
    locked: state.locked === true,
    aborting: state.abortedAt !== undefined && state.stage === 'descending',
    seats: viewSeats(state),
    ...viewStop(state),
    ...viewBrief(table.plan),
    ...viewSettings(state),
    ...viewFlight(table),
    commanded: state.commanded,
    ...(state.orders !== undefined && { orders: state.orders }),
    pace: state.pace,
    ...(scorecard === undefined ? {} : { scorecard }),
    ...(state.stage === 'resolved' && run.fork !== undefined && { fork: run.fork }),
  };
}

/** The part of it that is this member's own. */
export function viewOwn(table: Table, id: MemberId): OwnView {
  const member = findMember(table.state, id);
  assert(member !== undefined, `there is a member ${id} at this table`);
  return viewFor(table, member);
}

/** What the control side was shown before, with what is true now: that is drawn, and moves between two looks at the figures. */
export function viewTruth({ run }: Table, before: OwnView): OwnView {
  const { control } = before;
  return control === undefined ? before : { ...before, control: { ...control, truth: run.flight } };
}

function viewFor(table: Table, member: Member): OwnView {
  const { state, run, plan } = table;
  const turn = viewTurn(state, member, run.flight.tick);
  const review = viewReview(table, member);
  return {
    ...viewPeople(state, member),
    plan: viewPlan(plan, isPencil(table) && !isControl(member)),
    ...(turn !== undefined && { turn }),
    ...viewOwnDrill(table, member),
    ...viewOwnReadings(table, isControl(member) ? SEATS : member.seat === undefined ? [] : [member.seat]),
    talk: viewTalk(state, member),
    ...(review !== undefined && { review }),
  };
}

const plansOf = createMemo<TablePlan, { readonly whole: OwnView['plan']; readonly hidden: OwnView['plan'] }>();

/** The seed draws the ground: whoever must not know the one must not know the other. */
function viewPlan(plan: TablePlan, isHidden: boolean): OwnView['plan'] {
  const { whole, hidden } = plansOf(plan, [], () => {
    const { title, landerId, siteId, worldId, seed, choice } = plan;
    const named = { title, landerId, siteId, worldId };
    return { whole: { ...named, seed, choice }, hidden: { ...named, seed: 0, choice: { ...choice, seed: 0 } } };
  });
  return isHidden ? hidden : whole;
}

const namedOf = createMemo<TableState['named'], readonly NamedSource[]>();

/** What seats have set and said: the whole crew is told. */
function viewSettings(state: TableState): Pick<CommonView, 'engine' | 'site' | 'named' | 'aligning' | 'startingIn'> {
  const { engine, site, named, aligningFor, againAt, tick } = state;
  return {
    engine,
    site,
    named: namedOf(named, [], () =>
      SOURCES.flatMap((source) => {
        const cause = named[source] ?? 'nothing';
        return cause === 'nothing' ? [] : [{ source, cause }];
      }),
    ),
    ...(aligningFor !== undefined && { aligning: aligningFor / TICK_RATE }),
    ...(againAt !== undefined && { startingIn: (againAt - tick) / (TICK_RATE * paceNow(state)) }),
  };
}
