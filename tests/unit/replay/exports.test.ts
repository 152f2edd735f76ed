import { describe, expect, it } from 'vitest';
import { CAUTION } from '../../../engine/constants.ts';
import { formatRecord, parseRecord } from '../../../engine/record/index.ts';
import { formatSamples, logDescent, samplesCsv, type DescentLog } from '../../../engine/replay/index.ts';
import { playedModel } from '../../../engine/table/index.ts';
import { flyDrill } from '../../support/flyDrill.ts';

const { record, plan, table } = flyDrill();
const log = logOf();

function logOf(): DescentLog {
  const made = logDescent(record, { plan, model: playedModel });
  if (!made.ok) throw new Error(made.error.code);
  return made.value;
}

describe('a record with its samples', () => {
  const text = formatRecord(record) + formatSamples(log.samples);

  it('[RP3] reads as the same record', () => {
    expect(parseRecord(text)).toEqual(parseRecord(formatRecord(record)));
    expect(parseRecord(text).ok).toBe(true);
  });

  it('[RP3] has a line for each sample, which reads back as it was, and the caution', () => {
    const lines = text.split('\n').filter((line) => line.includes('"line":"sample"'));
    expect(lines.map((line) => JSON.parse(line))).toEqual(JSON.parse(JSON.stringify(log.samples)));
    expect(text).toContain(CAUTION);
  });

  it('[RP3] still refuses a line of another kind', () => {
    expect(parseRecord(`${formatRecord(record)}{"line":"samples"}\n`).ok).toBe(false);
  });
});

describe('the table of samples', () => {
  const [caution = '', head = '', ...rows] = samplesCsv(log.samples).trimEnd().split('\n');
  const names = head.split(',');
  const cell = (row: string, name: string) => row.split(',')[names.indexOf(name)];

  it('[RP3] begins with the caution, and has as many cells in each row as names', () => {
    expect(caution).toBe(`# ${CAUTION}`);
    expect(new Set(names).size).toBe(names.length);
    expect(rows.length).toBe(log.samples.length);
    expect(rows.every((row) => row.split(',').length === names.length)).toBe(true);
  });

  it('[RP3] has every figure to the last digit, and nothing where there was none', () => {
    for (const [i, { after, truth, believed, sensed }] of log.samples.entries()) {
      const row = rows[i]!;
      expect(Number(cell(row, 'after_s'))).toBe(after);
      expect(Number(cell(row, 'true_vx_m/s'))).toBe(truth.vx);
      expect(Number(cell(row, 'believed_height_m'))).toBe(believed?.height);
      expect(Number(cell(row, 'sensed_altimeter_range'))).toBe(sensed?.altimeter.values[0]);
      expect(cell(row, 'true_utilisation_-')).toBe(truth.utilisation === undefined ? '' : String(truth.utilisation));
    }
  });
});

describe('the statements', () => {
  const text = JSON.stringify(log.statements);
  const [own] = log.statements;

  it('[RP4] name nobody and pass nobody, and carry the caution', () => {
    expect(log.statements.length).toBeGreaterThan(0);
    expect(text).not.toContain('Ada');
    expect(text).not.toContain('Fay');
    expect(text).not.toMatch(/"(success|score)"/);
    for (const { context } of log.statements) expect(Object.values(context.extensions)).toContain(CAUTION);
  });

  it('[RP4] have ids that are the same whenever they are made, and no two alike', () => {
    expect(logOf().statements).toEqual(log.statements);
    const ids = log.statements.map(({ id }) => id);
    expect(new Set(ids).size).toBe(ids.length);
    for (const id of ids) expect(id).toMatch(/^[0-9a-f]{8}-[0-9a-f]{4}-8[0-9a-f]{3}-a[0-9a-f]{3}-[0-9a-f]{12}$/);
  });

  it('[RP4] say how it ended, for how long it went on, and from which seat', () => {
    const { outcome } = table.run.flight;
    expect(outcome).toBeDefined();
    expect(own?.result.duration).toBe(`PT${(table.run.flight.tick / 60).toFixed(1)}S`);
    expect(Object.values(own?.context.extensions ?? {})).toContain('sensors');
  });
});
