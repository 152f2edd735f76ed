import { describe, expect, it } from 'vitest';
import {
  LONGEST_NAME,
  MOST_MEMBERS,
  createTable,
  judgeEntry,
  parseMemberName,
  viewTable,
} from '../../../engine/table/index.ts';
import { commandTable, dropMember, joinTable, leaveTable } from '../../support/askTable.ts';
import { plainModel, plainPlan } from '../../support/plainTable.ts';

describe('an entry from elsewhere', () => {
  it.each(['dropped', 'returned', 'left'] as const)(
    '[TA19] says of nobody who is not here that they have %s',
    (kind) => {
      const table = createTable({ plan: plainPlan, model: plainModel });
      join(table, 'Ada');
      const judged = ['m1', 'm2'].map(
        (member) => judgeEntry(table.state, { tick: 0, member, content: { kind } })?.code,
      );
      expect(judged).toEqual([undefined, 'table/not-here']);
    },
  );
});

describe('joining a table', () => {
  it('[TA1] names members in order of joining, and never reuses the name of one who left', () => {
    const table = createTable({ plan: plainPlan, model: plainModel });
    const ids = ['Ada', 'Bo'].map((name) => join(table, name));
    leaveTable(table, 'm2');
    expect([...ids, join(table, 'Cy')]).toEqual(['m1', 'm2', 'm3']);
    expect(viewTable(table, 'm3').you).toEqual({
      id: 'm3',
      name: 'Cy',
      role: 'crew',
      ready: false,
      runs: false,
      holds: { thrust: false, tilt: false },
      mayTakeSeat: true,
      decides: false,
    });
  });

  it('[TA2] refuses one more than a table takes', () => {
    const table = createTable({ plan: plainPlan, model: plainModel });
    for (let i = 0; i < MOST_MEMBERS; i += 1) join(table, `Member ${i}`);
    const refused = joinTable(table, { name: 'Late' });
    expect(refused).toMatchObject({ ok: false, error: { code: 'table/full' } });
    leaveTable(table, 'm1');
    expect(joinTable(table, { name: 'Late' }).ok).toBe(true);
  });

  it('[TA23] shows everybody who else is here without a seat, in order of joining', () => {
    const table = createTable({ plan: plainPlan, model: plainModel });
    for (const name of ['Ada', 'Bo', 'Cy', 'Di']) join(table, name);
    expect(viewTable(table, 'm1').watching).toEqual(['Bo', 'Cy', 'Di']);
    commandTable(table, 'm2', { kind: 'takeSeat', seat: 'lead' });
    dropMember(table, 'm4');
    expect(viewTable(table, 'm1').watching).toEqual(['Cy']);
    expect(viewTable(table, 'm3').watching).toEqual(['Ada']);
    commandTable(table, 'm2', { kind: 'leaveSeat' });
    expect(viewTable(table, 'm3').watching).toEqual(['Ada', 'Bo']);
  });

  it('[TA23] gives the later of two people with one name a number, within the length of a name', () => {
    const table = createTable({ plan: plainPlan, model: plainModel });
    const longest = 'x'.repeat(LONGEST_NAME);
    for (const name of ['Wren', 'Wren', 'Wren 2', 'Wren', longest, longest]) join(table, name);
    const names = table.state.members.map(({ name }) => name);
    expect(names).toEqual(['Wren', 'Wren 2', 'Wren 2 2', 'Wren 3', longest, `${'x'.repeat(LONGEST_NAME - 2)} 2`]);
    leaveTable(table, 'm1');
    join(table, 'Wren');
    expect(table.state.members.at(-1)?.name).toBe('Wren');
  });

  it('throws when it is asked about a member who is not there', () => {
    const table = createTable({ plan: plainPlan, model: plainModel });
    expect(() => viewTable(table, 'm1')).toThrow('member m1');
    expect(() => leaveTable(table, 'm1')).toThrow('member m1');
  });
});

describe('a name at the table', () => {
  it('[TA3] is trimmed plain text of 1 to 24 characters, in any script', () => {
    for (const name of ['Ada', 'Łukasz Żak', '山田 太郎', 'x'.repeat(LONGEST_NAME), '😀'.repeat(LONGEST_NAME)]) {
      expect(parseMemberName(`  ${name} `)).toEqual({ ok: true, value: name });
    }
  });

  it.each([
    ['nothing', '', 'Give a name'],
    ['blanks', ' \t ', 'Give a name'],
    ['too long', 'x'.repeat(25), '25 characters'],
    ['a line break', 'Ada\nBo', 'cannot be seen'],
    ['a change of writing direction', 'Ada\u202Eod', 'cannot be seen'],
    ['a zero-width space', 'Ada\u200Bx', 'cannot be seen'],
    ['a null', 'A\u0000', 'cannot be seen'],
    ['half a character', 'A\uD800', 'cannot be seen'],
  ])('[TA3] is refused when it is %s', (_what, text, reason) => {
    const refused = parseMemberName(text);
    expect(refused.ok ? '' : refused.error.reason).toContain(reason);
  });
});

function join(table: ReturnType<typeof createTable>, name: string): string {
  const joined = joinTable(table, { name });
  return joined.ok ? joined.value.id : joined.error.reason;
}
