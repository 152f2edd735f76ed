import { assert } from '../assert.ts';
import { accept, refuse, type Result } from '../result.ts';
import { LONGEST_NAME, parseMemberName } from './memberName.ts';
import type { Member, Table } from './table.ts';
import type { MemberId, Refusal } from './tableTypes.ts';

/** Most people at one table, seated or watching, present or away. */
export const MOST_MEMBERS = 40;

/** A new member, not seated yet. */
export function joinTable(table: Table, options: { readonly name: string }): Result<Member, Refusal> {
  const name = parseMemberName(options.name);
  if (!name.ok) return name;
  if (table.members.length >= MOST_MEMBERS) {
    return refuse({ code: 'table/full', reason: `This table is full: it takes ${MOST_MEMBERS} people.` });
  }
  table.joined += 1;
  const member: Member = {
    id: `m${table.joined}`,
    name: unusedName(table, name.value),
    seat: undefined,
    absentSince: undefined,
  };
  table.members.push(member);
  return accept(member);
}

/** Of two people with one name the later gets a number, so that whoever reads a name knows who is meant. */
function unusedName({ members }: Table, name: string): string {
  const isUsed = (candidate: string) => members.some((member) => member.name === candidate);
  let candidate = name;
  for (let number = 2; isUsed(candidate); number += 1) {
    const suffix = ` ${number}`;
    candidate =
      Array.from(name)
        .slice(0, LONGEST_NAME - suffix.length)
        .join('') + suffix;
  }
  return candidate;
}

/** The line to a member dropped: the seat is kept, and a stand-in covers it when the member stays away. */
export function dropMember(table: Table, id: MemberId): void {
  const member = memberOf(table, id);
  member.absentSince ??= table.tick;
}

/** The member is back, in the same seat. */
export function returnMember(table: Table, id: MemberId): Member {
  const member = memberOf(table, id);
  member.absentSince = undefined;
  return member;
}

/** The member is gone for good; the seat is free. */
export function leaveTable(table: Table, id: MemberId): void {
  memberOf(table, id);
  table.members = table.members.filter((member) => member.id !== id);
}

/** Lets go of everybody who has been away for so long [ticks]; returns who that was. */
export function forgetAbsent(table: Table, afterTicks: number): readonly MemberId[] {
  const gone = table.members.filter(
    ({ absentSince }) => absentSince !== undefined && table.tick - absentSince >= afterTicks,
  );
  for (const { id } of gone) leaveTable(table, id);
  return gone.map(({ id }) => id);
}

export function memberOf(table: Table, id: MemberId): Member {
  const member = table.members.find((candidate) => candidate.id === id);
  assert(member !== undefined, `there is a member ${id} at this table`);
  return member;
}
