import { array, assert, boolean, integer, nat, property, record } from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  askTable,
  headerOf,
  joinTable,
  markLine,
  openKeptTable,
  replayRecord,
  resumeKeptTable,
  stepKeptTable,
  type KeptTable,
  type RecordLine,
} from '../../../engine/record/index.ts';
import { FACING_RANGE, playedModel, type TablePlan } from '../../../engine/table/index.ts';
import { laid } from '../../support/planChoice.ts';

/** Turns to anywhere, some of which leave time for an edge of Steeple to come to the right, which takes 360 ticks. */
const turns = array(
  record({ steps: integer({ min: FACING_RANGE.least, max: FACING_RANGE.most }), ticks: integer({ min: 0, max: 500 }) }),
  { minLength: 2, maxLength: 6 },
);

function open(plan: TablePlan): { readonly kept: KeptTable; readonly lines: RecordLine[] } {
  const lines: RecordLine[] = [];
  const kept = openKeptTable({ plan, model: playedModel, write: (line) => lines.push(line) });
  joinTable(kept, 'Ada');
  askTable(kept, 'm1', { kind: 'takeSeat', seat: 'site' });
  askTable(kept, 'm1', { kind: 'begin' });
  return { kept, lines };
}

function act(kept: KeptTable, { steps, ticks }: { readonly steps: number; readonly ticks: number }): void {
  askTable(kept, 'm1', { kind: 'orderFacing', steps });
  for (let i = 0; i < ticks; i += 1) stepKeptTable(kept);
}

describe('any turns about the long axis', () => {
  it('[RE2] [RE6] are their record: replayed, or cut anywhere and taken up, they give the same marks', () => {
    let turned = 0;
    assert(
      property(integer({ min: 1, max: 9 }), boolean(), turns, nat(), (seed, byInstruments, given, cut) => {
        const sensorTrouble = byInstruments ? 'legs' : 'none';
        const plan = laid({ lander: 'steeple', site: 'ravel-bank', start: 'high', seed, sensorTrouble });
        const parts = { plan, model: playedModel };
        const whole = open(plan);
        const killed = open(plan);
        for (const one of given) act(whole.kept, one);
        if (whole.kept.table.run.flight.facing?.steps !== 0) turned += 1;
        const end = markLine(whole.kept.table);
        const replayed = replayRecord({ header: headerOf(plan), lines: [...whole.lines, end] }, parts);
        if (!replayed.ok) throw new Error(replayed.error.code);
        expect(replayed.value.divergence).toBeUndefined();
        expect(replayed.value.marks).toBeGreaterThan(0);
        const at = cut % given.length;
        for (const one of given.slice(0, at)) act(killed.kept, one);
        const record = { header: headerOf(plan), lines: [...killed.lines] };
        const resumed = resumeKeptTable(record, { ...parts, write: (line) => killed.lines.push(line) });
        if (!resumed.ok) throw new Error('expected to be taken up');
        while (resumed.value.table.state.tick < killed.kept.table.state.tick) stepKeptTable(resumed.value);
        for (const one of given.slice(at)) act(resumed.value, one);
        expect(markLine(resumed.value.table)).toEqual(end);
      }),
      { seed: 14, numRuns: 8 },
    );
    expect(turned).toBeGreaterThan(1);
  }, 120_000);
});
