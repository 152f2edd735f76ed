import { accept, type Result } from '../../engine/result.ts';
import {
  applyEntry,
  judgeCommand,
  judgeJoin,
  noteLine,
  type Command,
  type MemberId,
  type Refusal,
  type Role,
  type Table,
} from '../../engine/table/index.ts';

/** The table alone, without a record: judged, then carried out. */

export function joinTable(table: Table, { name }: { readonly name: string }): Result<{ id: MemberId }, Refusal> {
  return askJoin(table, name, 'crew');
}

export function askJoin(table: Table, name: string, role: Role): Result<{ id: MemberId }, Refusal> {
  const judged = judgeJoin(table.state, name, role);
  if (!judged.ok) return judged;
  applyEntry(table, judged.value);
  return accept({ id: judged.value.member });
}

export function commandTable(table: Table, id: MemberId, command: Command): Result<void, Refusal> {
  const judged = judgeCommand(table.state, id, command);
  if (!judged.ok) return judged;
  applyEntry(table, judged.value);
  return accept(undefined);
}

/** The same in a word: 'done', or the code of the refusal. */
export function say(table: Table, id: MemberId, command: Command): string {
  const said = commandTable(table, id, command);
  return said.ok ? 'done' : said.error.code;
}

export const dropMember = (table: Table, id: MemberId) => applyEntry(table, noteLine(table.state, id, 'dropped'));
export const returnMember = (table: Table, id: MemberId) => applyEntry(table, noteLine(table.state, id, 'returned'));
export const leaveTable = (table: Table, id: MemberId) => applyEntry(table, noteLine(table.state, id, 'left'));
