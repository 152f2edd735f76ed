import { controlsOf, memberAt } from './controls.ts';
import { memberOf } from './members.ts';
import type { Member, Table } from './table.ts';
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
  const member = memberOf(table, id);
  const { title, landerId, siteId, worldId, seed } = table.plan;
  return {
    stage: table.stage,
    held: table.held,
    you: viewYou(table, member),
    seats: SEATS.map((seat) => viewSeat(table, seat)),
    watching: table.members.filter((other) => other !== member && isWatching(other)).map(({ name }) => name),
    plan: { title, landerId, siteId, worldId, seed },
    commanded: table.run.commanded,
    flight: table.run.flight,
    margin: table.run.margin,
    ...(table.scorecard === undefined ? {} : { scorecard: table.scorecard }),
  };
}

function viewYou(table: Table, { id, name, seat }: Member): YouView {
  const holds = controlsOf(table, seat);
  const standInLeft = leftToHolder(table, holds);
  return {
    id,
    name,
    ...(seat === undefined ? {} : { seat }),
    holds,
    ...(standInLeft.thrust || standInLeft.tilt ? { standInLeft } : {}),
  };
}

/** What the stand-in last commanded, of that which a member holds while a descent runs. */
function leftToHolder({ stage, run }: Table, holds: HeldControls): HeldControls {
  const { thrust, tilt } = run.leftByStandIn;
  const isFlown = stage === 'descending';
  return { thrust: isFlown && thrust && holds.thrust, tilt: isFlown && tilt && holds.tilt };
}

function isWatching({ seat, absentSince }: Member): boolean {
  return seat === undefined && absentSince === undefined;
}

function viewSeat(table: Table, seat: Seat): SeatView {
  const sitter = memberAt(table, seat);
  return {
    seat,
    ...(sitter === undefined ? {} : { name: sitter.name }),
    connected: sitter !== undefined && sitter.absentSince === undefined,
    holds: controlsOf(table, seat),
  };
}
