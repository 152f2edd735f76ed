import { describe, expect, it } from 'vitest';
import {
  askTable,
  headerOf,
  joinTable,
  markLine,
  openKeptTable,
  relayKeptTable,
  replayRecord,
  stepKeptTable,
  tellLine,
  type RecordLine,
} from '../../../engine/record/index.ts';
import type { TablePlan } from '../../../engine/table/index.ts';
import { plainModel, plainPlan } from '../../support/plainTable.ts';

const OTHER: TablePlan = { ...plainPlan, choice: { ...plainPlan.choice, mode: 'by orders', pace: 0.25 } };

describe('a table that is laid out anew', () => {
  it('[RE10] has everybody where they were, at the same tick, and a record that starts from the new plan', () => {
    const before: RecordLine[] = [];
    const kept = openKeptTable({ plan: plainPlan, model: plainModel, write: (line) => before.push(line) });
    for (const name of ['Ada', 'Gone', 'Bo']) {
      joinTable(kept, name);
      stepKeptTable(kept);
    }
    tellLine(kept, 'm2', 'left');
    askTable(kept, 'm1', { kind: 'takeSeat', seat: 'lead' });
    askTable(kept, 'm3', { kind: 'takeSeat', seat: 'flying' });
    askTable(kept, 'm1', { kind: 'setPace', pace: 0.5 });
    tellLine(kept, 'm3', 'dropped');
    for (let i = 0; i < 20; i += 1) stepKeptTable(kept);

    const lines: RecordLine[] = [];
    const { state } = kept.table;
    const gathered = before.filter((line) => line.line === 'entry');
    const parts = { plan: OTHER, model: plainModel };
    const anew = relayKeptTable({ gathered, tick: state.tick }, { ...parts, write: (line) => lines.push(line) });
    const { members, tick, joined, pace, orders } = anew.table.state;
    expect({ members, tick, joined }).toEqual({ members: state.members, tick: 23, joined: 3 });
    expect(pace).toBe(0.25);
    expect(orders).toBeDefined();

    askTable(anew, 'm1', { kind: 'begin' });
    for (let i = 0; i < 100; i += 1) stepKeptTable(anew);
    const replayed = replayRecord({ header: headerOf(OTHER), lines: [...lines, markLine(anew.table)] }, parts);
    if (!replayed.ok) throw new Error(replayed.error.code);
    expect(replayed.value.divergence).toBeUndefined();
    expect(replayed.value.table.state).toEqual(anew.table.state);
  });
});
