import { describe, expect, it } from 'vitest';
import {
  askTable,
  forgetName,
  formatRecord,
  headerOf,
  joinTable,
  markLine,
  openKeptTable,
  parseRecord,
  replayRecord,
  type RecordLine,
  type TableRecord,
} from '../../../engine/record/index.ts';
import { plainModel, plainPlan } from '../../support/plainTable.ts';

const PARTS = { plan: plainPlan, model: plainModel };

function recordOf(names: readonly string[], said: readonly string[]): TableRecord {
  const lines: RecordLine[] = [];
  const kept = openKeptTable({ ...PARTS, write: (line) => lines.push(line) });
  for (const name of names) joinTable(kept, name);
  const sat = askTable(kept, 'm1', { kind: 'takeSeat', seat: 'lead' });
  expect(sat.ok).toBe(true);
  for (const text of said) {
    const asked = askTable(kept, 'm1', { kind: 'say', to: 'all', text });
    if (!asked.ok) throw new Error(asked.error.reason);
  }
  return { header: headerOf(plainPlan), lines: [...lines, markLine(kept.table)] };
}

function forgotten(record: TableRecord, name: string): string {
  const renamed = forgetName(record, PARTS, name);
  if (!renamed.ok) throw new Error(renamed.error);
  const text = formatRecord(renamed.value);
  const parsed = parseRecord(text);
  if (!parsed.ok) throw new Error(JSON.stringify(parsed.error));
  const replayed = replayRecord(parsed.value, PARTS);
  expect(replayed.ok && replayed.value.divergence).toBe(undefined);
  return text;
}

describe('a record without a name', () => {
  it('has "Person" and a number for it, where it stands as a word of its own, in letters large or small', () => {
    const text = forgotten(recordOf(['Ada', 'Bo'], ['ada, adapt. ADA!', 'Bo and Ada']), 'Ada');
    expect(text).toContain('"Person 1, adapt. Person 1!"');
    expect(text).toContain('"Bo and Person 1"');
    expect(text).not.toMatch(/\bada\b/i);
  });

  it('keeps apart from somebody who is called that', () => {
    expect(forgotten(recordOf(['Ada', 'Person 1'], []), 'Ada')).toContain('"Person 101"');
  });

  it('has a short sign for it in a text that would grow too long', () => {
    const text = forgotten(recordOf(['Al'], ['Al '.repeat(26).trim()]), 'Al');
    expect(text).not.toContain('Al');
    expect(text).toContain('… … …');
  });

  it('takes names with signs that mean something in a pattern', () => {
    expect(forgotten(recordOf(['A.(b*'], ['A.(b* there, Axb there']), 'A.(b*')).toContain('Person 1 there, Axb there');
  });

  it('is refused in words for a name that nobody has, and for a record that does not play again', () => {
    const record = recordOf(['Ada'], []);
    expect(forgetName(record, PARTS, 'Cy')).toEqual({ ok: false, error: 'Nobody in this run has the name Cy.' });
    const lines = record.lines.map((line) => (line.line === 'mark' ? { ...line, x: line.x + 1 } : line));
    expect(forgetName({ ...record, lines }, PARTS, 'Ada')).toMatchObject({
      ok: false,
      error: expect.stringContaining('does not play again') as string,
    });
  });
});
