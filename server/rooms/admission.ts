import { ServerError } from '@colyseus/core';
import { joinTable, tellLine, type KeptTable } from '../../engine/record/index.ts';
import type { MemberId } from '../../engine/table/index.ts';
import { JOIN_CODES } from '../messages/index.ts';
import { ALL_IN_USE, TOO_MANY_TABLES, type Entering } from './entrance.ts';
import type { Places } from './places.ts';
import type { TableRegistry } from './tableRegistry.ts';

/** Who opened the table. */
const FIRST_MEMBER: MemberId = 'm1';

const TOO_MANY_FROM_THERE = 'Too many people joined this table from your network. Ask for a place at the table.';

/** Refuses a new table. Asked where it is opened, which may be another process than the one that was asked. */
export function refuseTooMany(registry: TableRegistry, address = ''): void {
  const refusal = registry.refusalFor(address);
  if (refusal === 'all in use') throw new ServerError(JOIN_CODES.noTableFree, ALL_IN_USE);
  if (refusal !== undefined) throw new ServerError(JOIN_CODES.tooMany, TOO_MANY_TABLES);
}

/** Where somebody is admitted. */
interface Place {
  readonly kept: KeptTable;
  readonly places: Places;
  readonly registry: TableRegistry;
}

/** The member who comes back, or a new one, with what proves it the next time. Throws what the client is told where nobody is let in. */
export function admit({ join, address }: Entering, to: Place): readonly [MemberId, string] {
  const { name, role = 'crew', resume } = join;
  if (resume !== undefined) return takeBack(resume, to);
  const { kept, places, registry } = to;
  const isJoined = hasJoined(kept);
  if (!isJoined && !registry.hasRoom()) throw new ServerError(JOIN_CODES.noTableFree, ALL_IN_USE);
  if (places.isCrowded(address)) throw new ServerError(JOIN_CODES.tableFull, TOO_MANY_FROM_THERE);
  // only who opens a table may run it from the start; later the part is handed over
  if (role === 'facilitator' && isJoined) {
    throw new ServerError(JOIN_CODES.notFacilitator, 'Only who opens a table runs it. Ask for the part at the table.');
  }
  const joined = joinTable(kept, name, role);
  if (!joined.ok) throw new ServerError(JOIN_CODES.tableFull, joined.error.reason);
  return [joined.value, places.give(joined.value, address)];
}

function takeBack(token: string, { kept, places }: Place): readonly [MemberId, string] {
  const memberId = places.memberOf(token);
  if (memberId === undefined) {
    throw new ServerError(JOIN_CODES.unknownPlace, 'Your place at this table was given up. Join again with the code.');
  }
  tellLine(kept, memberId, 'returned');
  return [memberId, places.renew(memberId, token)];
}

/** Whether anybody ever came. */
export function hasJoined({ table }: KeptTable): boolean {
  return table.state.joined > 0;
}

/** The facilitator; where nobody facilitates, whoever opened the table. */
export function runsTable({ table }: KeptTable, memberId: MemberId): boolean {
  const facilitator = table.state.members.find(({ role }) => role === 'facilitator');
  return facilitator === undefined ? memberId === FIRST_MEMBER : memberId === facilitator.id;
}
