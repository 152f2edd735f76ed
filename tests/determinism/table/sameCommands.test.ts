import { describe, expect, it } from 'vitest';
import { replayRecord } from '../../../engine/record/index.ts';
import { playedModel, viewTable } from '../../../engine/table/index.ts';
import { firstLanding } from '../../../levels/index.ts';
import { flyCrew } from '../../support/flyRecord.ts';

describe('a table', () => {
  it('[TA19] gives the same bits for the same plan and the same entries at the same ticks', () => {
    const first = flyCrew(1);
    const second = flyCrew(1);
    expect(first.table.state.stage).toBe('resolved');
    expect(second.readings).toEqual(first.readings);
    expect(second.record).toEqual(first.record);
    expect(first.readings.length).toBeGreaterThan(15);
    expect(new Set(first.readings).size).toBeGreaterThan(12);
  });

  it('[TA19] gives other bits over other ground', () => {
    const hashes = [1, 2].map((seed) => {
      const last = flyCrew(seed).record.lines.at(-1);
      return last?.line === 'mark' ? last.hash : undefined;
    });
    expect(hashes[0]).toMatch(/^[0-9a-f]{16}$/);
    expect(hashes[0]).not.toBe(hashes[1]);
  });

  it('[TA19] is the same again when it is made from its record alone, to what each member is shown', () => {
    const { record, table, readings } = flyCrew(1);
    const replay = replayRecord(record, { plan: firstLanding(1), model: playedModel });
    if (!replay.ok) throw new Error(replay.error.code);
    expect(replay.value.divergence).toBeUndefined();
    expect(replay.value.marks).toBeGreaterThan(20);
    expect(replay.value.table.state).toEqual(table.state);
    expect(JSON.stringify(viewTable(replay.value.table, 'm2'))).toBe(readings.at(-1));
    expect(viewTable(replay.value.table, 'm1').scorecard?.contacts.length).toBeGreaterThan(0);
  });

  it('[TA19] keeps its state, besides the played world, as plain data', () => {
    const { state } = flyCrew(1).table;
    expect(structuredClone(state)).toEqual(state);
    expect(JSON.parse(JSON.stringify(state))).toMatchObject({ tick: state.tick, joined: 2, descents: 1 });
  });
});
