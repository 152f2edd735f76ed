import { describe, expect, it } from 'vitest';
import { hashValue } from '../../../engine/math/hashValue.ts';
import {
  formatRecord,
  MARK_EVERY,
  MARK_FIELDS,
  parseRecord,
  replayRecord,
  type RecordLine,
  type TableRecord,
} from '../../../engine/record/index.ts';
import { formatProblem } from '../../../engine/result.ts';
import { playedModel } from '../../../engine/table/index.ts';
import { firstLanding } from '../../../levels/index.ts';
import { flyCrew } from '../../support/flyRecord.ts';

const PLAN = firstLanding(4);
const { record, table } = flyCrew(4);
const MARKS = record.lines.filter((line) => line.line === 'mark');

function replay(of: TableRecord = record, plan = PLAN) {
  const made = replayRecord(of, { plan, model: playedModel });
  if (!made.ok) throw new Error(made.error.code);
  return made.value;
}

function problems(text: string): readonly string[] {
  const parsed = parseRecord(text);
  return parsed.ok ? [] : parsed.error.map(formatProblem);
}

/** The record with one line changed. */
function spoil(index: number, change: (line: RecordLine) => RecordLine): TableRecord {
  return { ...record, lines: record.lines.map((line, i) => (i === index ? change(line) : line)) };
}

const indexOfMark = (n: number) => record.lines.indexOf(MARKS[n] ?? ({ line: 'mark' } as never));

describe('a record', () => {
  it('[RE2] holds what came from outside in order, and a mark each half second of the descent and at its end', () => {
    const kinds = record.lines.flatMap((line) => (line.line === 'entry' ? [line.content.kind] : []));
    expect(kinds.slice(0, 4)).toEqual(['joined', 'joined', 'takeSeat', 'begin']);
    expect(kinds.filter((kind) => kind === 'dropped' || kind === 'returned')).toEqual(['dropped', 'returned']);
    const ticks = MARKS.map(({ tick }) => tick);
    expect(ticks[0]).toBe(0);
    const { tick: end } = table.state;
    // on hold from tick 260 to 300 nothing moves, and nothing is marked
    const due = Array.from({ length: Math.floor(end / MARK_EVERY) }, (_, i) => (i + 1) * MARK_EVERY);
    expect(ticks.slice(1, -1)).toEqual(
      [...due.filter((tick) => tick <= 260 || tick > 300), end].slice(0, ticks.length - 2),
    );
    expect(ticks.at(-1)).toBe(end);
  });

  it('[RE2] survives being written and read', () => {
    expect(parseRecord(formatRecord(record))).toEqual({ ok: true, value: record });
  });

  it('[RE4] replays without a difference, to the same state', () => {
    const replayed = replay();
    expect(replayed.divergence).toBeUndefined();
    expect(replayed.marks).toBe(MARKS.length);
    expect(replayed.table.state).toEqual(table.state);
  });

  it.each(MARK_FIELDS)('[RE4] reports the first tick at which %s differs, and replays on', (field) => {
    const at = indexOfMark(9);
    const spoiled = spoil(at, (line) => {
      if (line.line !== 'mark') throw new Error('no mark');
      const value = line[field];
      if (field === 'stage') return { ...line, stage: 'gathering' };
      if (field === 'phase') return { ...line, phase: 'settling' };
      // the last bit of a number; of a hash any other
      const other =
        typeof value === 'number'
          ? value === 0
            ? Number.MIN_VALUE
            : value * (1 + Number.EPSILON)
          : '0123456789abcdef';
      return { ...line, [field]: other };
    });
    const { divergence, marks } = replay(spoiled);
    expect(divergence).toMatchObject({ tick: MARKS[9]?.tick, field });
    expect(marks).toBe(MARKS.length);
  });

  it('[RE4] shows at the next mark what one other command does', () => {
    const at = record.lines.findIndex((line) => line.line === 'entry' && line.content.kind === 'setThrust');
    const entry = record.lines[at];
    const spoiled = spoil(at, (line) => ({ ...line, content: { kind: 'setThrust', percent: 90 } }) as RecordLine);
    const { divergence } = replay(spoiled);
    expect(divergence?.tick).toBe((Math.floor((entry?.tick ?? 0) / MARK_EVERY) + 1) * MARK_EVERY);
    expect(divergence?.recorded).not.toBe(divergence?.replayed);
  });

  it('[RE4] leaves out, and reports, an entry that the table could not have got', () => {
    const at = record.lines.findIndex((line) => line.line === 'entry' && line.content.kind === 'setThrust');
    const { divergence, table: left } = replay(spoil(at, (line) => ({ ...line, member: 'm7' })));
    expect(divergence).toMatchObject({ field: 'entry', recorded: 'setThrust' });
    expect(left.state.tick).toBe(table.state.tick);
  });
});

describe('a record that cannot be trusted', () => {
  it('[RE3] is refused for another setup', () => {
    const parts = { model: playedModel };
    const other = replayRecord(record, { ...parts, plan: firstLanding(5) });
    expect(other).toMatchObject({ ok: false, error: { code: 'record/other-setup' } });
    const heavier = { ...PLAN, setup: { ...PLAN.setup, gravity: PLAN.setup.gravity * (1 + Number.EPSILON) } };
    expect(replayRecord(record, { ...parts, plan: heavier }).ok).toBe(false);
  });

  it('[RE3] has a hash of the setup that looks at everything but the order of fields', () => {
    const { setup } = PLAN;
    const reordered = Object.fromEntries(Object.entries(setup).toReversed());
    expect(hashValue(reordered)).toBe(hashValue(setup));
    const heights = setup.terrain.heights.with(7, (setup.terrain.heights[7] ?? 0) + 1e-12);
    expect(hashValue({ ...setup, terrain: { ...setup.terrain, heights } })).not.toBe(hashValue(setup));
    expect(hashValue({ ...setup, lander: { ...setup.lander, name: 'Other' } })).not.toBe(hashValue(setup));
  });

  it.each(['format', 'physics', 'tickRate'])('[RE3] is refused for another %s, and nothing else is read', (field) => {
    const header = { ...record.header, [field]: field === 'format' ? 'kilter-record/0' : 7 };
    const found = problems(`${JSON.stringify(header)}\nnonsense\n`);
    expect(found).toHaveLength(1);
    expect(found[0]).toContain(`line 1.${field}`);
  });

  it.each([
    ['text that is no JSON', 'tick 5', 'line 3: expected one JSON value'],
    ['an unknown kind', '{"line":"entry","tick":0,"member":"m1","content":{"kind":"begun"}}', 'did you mean'],
    [
      'a field too many',
      '{"line":"entry","tick":0,"member":"m1","content":{"kind":"begin","now":true}}',
      'content.now',
    ],
    ['a field too few', '{"line":"entry","tick":0,"member":"m1","content":{"kind":"setTilt"}}', 'content.degrees'],
    [
      'a tilt beyond its range',
      '{"line":"entry","tick":0,"member":"m1","content":{"kind":"setTilt","degrees":91}}',
      '-30 to 30',
    ],
    ['no member', '{"line":"entry","tick":0,"member":"Ada","content":{"kind":"begin"}}', 'line 3.member'],
    ['half a tick', '{"line":"entry","tick":0.5,"member":"m1","content":{"kind":"begin"}}', 'line 3.tick'],
    ['a mark without its hash', '{"line":"mark","tick":0,"stage":"gathering"}', 'line 3.hash'],
    ['another line', '{"line":"note","tick":0,"member":"m1","content":{"kind":"begin"}}', 'line 3.line'],
  ])('[RE5] is refused for %s, with its place', (_what, line, words) => {
    const [header, first] = formatRecord(record).split('\n');
    expect(problems([header, first, line].join('\n')).join('; ')).toContain(words);
  });

  it('[RE5] is refused when its ticks go back', () => {
    const { header, lines } = record;
    expect(problems(formatRecord({ header, lines: lines.toReversed() })).join('; ')).toMatch(/or later/);
  });

  it('[RE5] is refused unread beyond its budget', () => {
    expect(problems(' '.repeat(40 * 1024 * 1024))).toEqual([expect.stringMatching(/at most \d+ characters/)]);
  });
});
