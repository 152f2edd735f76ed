import { array, assert, boolean, constant, integer, oneof, property, record, type Arbitrary } from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  askTable,
  headerOf,
  joinTable,
  markLine,
  openKeptTable,
  replayRecord,
  stepKeptTable,
  type RecordLine,
} from '../../../engine/record/index.ts';
import { playedModel, viewTable, type Command } from '../../../engine/table/index.ts';
import { laid } from '../../support/planChoice.ts';

/** Orders that the table takes, each held for up to two seconds; most of those for the rate lead down to the ground. */
const order: Arbitrary<Command> = oneof(
  record({ kind: constant('orderDescentRate' as const), tenths: integer({ min: 20, max: 60 }) }),
  record({ kind: constant('orderDescentRate' as const), tenths: integer({ min: -20, max: 60 }) }),
  record({ kind: constant('orderDrift' as const), tenths: integer({ min: -50, max: 50 }) }),
  record({ kind: constant('orderLean' as const), degrees: integer({ min: -30, max: 30 }) }),
);
const session = array(record({ order, ticks: integer({ min: 0, max: 120 }) }), { minLength: 8, maxLength: 16 });

describe('any orders', () => {
  it('[RE2] in the played world, with instruments and without, are their record: replayed they give the same marks', () => {
    let landed = 0;
    assert(
      property(integer({ min: 1, max: 9 }), boolean(), session, (seed, byInstruments, given) => {
        const sensorTrouble = byInstruments ? 'seeded' : 'none';
        const parts = { plan: laid({ seed, start: 'low', mode: 'by orders', sensorTrouble }), model: playedModel };
        const lines: RecordLine[] = [];
        const kept = openKeptTable({ ...parts, write: (line) => lines.push(line) });
        const id = joinTable(kept, 'Ada');
        if (!id.ok) throw new Error(id.error.reason);
        askTable(kept, id.value, { kind: 'takeSeat', seat: 'flying' });
        askTable(kept, id.value, { kind: 'begin' });
        for (const { order: command, ticks } of given) {
          const isFlying = kept.table.state.stage === 'descending';
          expect(askTable(kept, id.value, command).ok).toBe(isFlying);
          for (let i = 0; i < ticks; i += 1) stepKeptTable(kept);
        }
        if (viewTable(kept.table, id.value).flight.touchdown !== undefined) landed += 1;
        const replayed = replayRecord({ header: headerOf(parts.plan), lines: [...lines, markLine(kept.table)] }, parts);
        if (!replayed.ok) throw new Error(replayed.error.code);
        expect(replayed.value.divergence).toBeUndefined();
        expect(replayed.value.marks).toBeGreaterThan(2);
        expect(replayed.value.table.state).toEqual(kept.table.state);
      }),
      { seed: 12, numRuns: 15 },
    );
    expect(landed).toBeGreaterThan(2);
  });
});
