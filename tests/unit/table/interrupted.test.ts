import { describe, expect, it } from 'vitest';
import { applyEntry, createTable, noteLine, stepTable, viewTable, type Table } from '../../../engine/table/index.ts';
import { commandTable, joinTable } from '../../support/askTable.ts';
import { plainModel, plainPlan } from '../../support/plainTable.ts';

function interrupt(table: Table): void {
  applyEntry(table, noteLine(table.state, 'm1', 'interrupted'));
}

function seated(): Table {
  const table = createTable({ plan: plainPlan, model: plainModel });
  joinTable(table, { name: 'Ada' });
  commandTable(table, 'm1', { kind: 'takeSeat', seat: 'flying' });
  return table;
}

describe('a table whose machine was away', () => {
  it('[TA30] holds a descent that ran until somebody resumes it', () => {
    const table = seated();
    commandTable(table, 'm1', { kind: 'begin' });
    for (let i = 0; i < 10; i += 1) stepTable(table);
    interrupt(table);
    for (let i = 0; i < 10; i += 1) stepTable(table);
    expect(viewTable(table, 'm1')).toMatchObject({ held: true, flight: { tick: 10 } });
    expect(commandTable(table, 'm1', { kind: 'resume' }).ok).toBe(true);
    stepTable(table);
    expect(viewTable(table, 'm1').flight.tick).toBe(11);
  });

  it('[TA30] holds nothing where none runs: the next descent begins as ever', () => {
    const table = seated();
    interrupt(table);
    expect(viewTable(table, 'm1').held).toBe(false);
    commandTable(table, 'm1', { kind: 'begin' });
    stepTable(table);
    expect(viewTable(table, 'm1')).toMatchObject({ held: false, flight: { tick: 1 } });
  });
});
