import { assert } from '../assert.ts';
import { controlsOf } from './controls.ts';
import { scorecardOf, type Table } from './table.ts';
import { findMember, memberAt, type Member, type TableState } from './tableState.ts';
import {
  SEATS,
  type HeldControls,
  type MemberId,
  type Seat,
  type SeatView,
  type TableView,
  type YouView,
} from './tableTypes.ts';

/**
 * What one member is shown of the state now: what it leaves out of that reaches nobody. The events that `stepTable` returns go to all members alike.
 * Plain data; the parts that did not change since the last tick may be the same objects.
 */
export function viewTable(table: Table, id: MemberId): TableView {
  const { state, run, plan } = table;
  const member = findMember(state, id);
  assert(member !== undefined, `there is a member ${id} at this table`);
  const { title, landerId, siteId, worldId, seed, choice } = plan;
  const scorecard = scorecardOf(table);
  return {
    stage: state.stage,
    held: state.held,
    you: viewYou(state, member),
    seats: SEATS.map((seat) => viewSeat(state, seat)),
    watching: state.members.filter((other) => other !== member && isWatching(other)).map(({ name }) => name),
    plan: { title, landerId, siteId, worldId, seed, choice },
    commanded: state.commanded,
    flight: run.flight,
    margin: run.margin,
    ...(scorecard === undefined ? {} : { scorecard }),
  };
}

function viewYou(state: TableState, { id, name, seat }: Member): YouView {
  const holds = controlsOf(state, seat);
  const standInLeft = leftToHolder(state, holds);
  return {
    id,
    name,
    ...(seat === undefined ? {} : { seat }),
    holds,
    ...(standInLeft.thrust || standInLeft.tilt ? { standInLeft } : {}),
  };
}

/** What the stand-in last commanded, of that which a member holds while a descent runs. */
function leftToHolder({ stage, leftByStandIn }: TableState, holds: HeldControls): HeldControls {
  const { thrust, tilt } = leftByStandIn;
  const isFlown = stage === 'descending';
  return { thrust: isFlown && thrust && holds.thrust, tilt: isFlown && tilt && holds.tilt };
}

function isWatching({ seat, absentSince }: Member): boolean {
  return seat === undefined && absentSince === undefined;
}

function viewSeat(state: TableState, seat: Seat): SeatView {
  const sitter = memberAt(state, seat);
  return {
    seat,
    ...(sitter === undefined ? {} : { name: sitter.name }),
    connected: sitter !== undefined && sitter.absentSince === undefined,
    holds: controlsOf(state, seat),
  };
}
