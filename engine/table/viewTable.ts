import { controlsOf, memberAt } from './controls.ts';
import { memberOf } from './members.ts';
import type { Table } from './table.ts';
import { SEATS, type MemberId, type Seat, type SeatView, type TableView } from './tableTypes.ts';

/**
 * What one member is shown now. This function is the only way out of the authority: what it leaves out reaches nobody.
 * Plain data; the parts that did not change since the last tick may be the same objects.
 */
export function viewTable(table: Table, id: MemberId): TableView {
  const member = memberOf(table, id);
  const { title, landerId, siteId, worldId, seed } = table.plan;
  return {
    stage: table.stage,
    held: table.held,
    you: {
      id,
      name: member.name,
      ...(member.seat === undefined ? {} : { seat: member.seat }),
      holds: controlsOf(table, member.seat),
    },
    seats: SEATS.map((seat) => viewSeat(table, seat)),
    plan: { title, landerId, siteId, worldId, seed },
    commanded: table.run.commanded,
    flight: table.run.flight,
    margin: table.run.margin,
    ...(table.scorecard === undefined ? {} : { scorecard: table.scorecard }),
  };
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
