import { describe, expect, it } from 'vitest';
import {
  askTable,
  forkRecord,
  joinTable,
  openKeptTable,
  stepKeptTable,
  type RecordLine,
  type TableRecord,
} from '../../../engine/record/index.ts';
import { playedModel, viewTable, type FlownPath, type Fork, type TablePlan } from '../../../engine/table/index.ts';
import { flyTroubled, type Flown, type Script } from '../../support/flyTroubled.ts';
import { laid } from '../../support/planChoice.ts';

/** The altimeter freezes 292 ticks after the start, and calls itself valid. */
const FREEZES = laid({ start: 'low', seed: 2, sensorTrouble: 'seeded' });
const FAILS = 292;
const HEALTHY: TablePlan = { ...FREEZES, setup: { ...FREEZES.setup, faults: [] } };

/** Someone at Flying who brakes and leans by hand, before the failure and after it. */
const BY_HAND: Script = {
  20: [{ kind: 'setThrust', percent: 30 }],
  60: [{ kind: 'setTilt', degrees: 6 }],
  150: [{ kind: 'setTilt', degrees: 0 }],
  200: [{ kind: 'hold' }],
  400: [{ kind: 'setThrust', percent: 31 }],
};

function fork(record: TableRecord, plan = FREEZES): Fork {
  const forked = forkRecord(record, { plan, model: playedModel }, { kind: 'source healthy', source: 'altimeter' });
  if (!forked.ok) throw new Error(forked.error.reason);
  return forked.value;
}

function codeOf(record: TableRecord, plan = FREEZES, source: 'altimeter' | 'velocityRadar' = 'altimeter') {
  const forked = forkRecord(record, { plan, model: playedModel }, { kind: 'source healthy', source });
  return forked.ok ? undefined : forked.error.code;
}

/** Each quarter second up to the first contact, and that contact. */
function pathOf({ table, heights, speeds }: Flown): FlownPath {
  const { tick, vx } = table.run.flight.touchdown!;
  const points = (ticks: readonly number[]) => ticks.filter((_, at) => at % 15 === 0 && at < tick);
  return { spacing: 0.25, heights: points(heights), speeds: points(speeds), contact: { after: tick / 60, speed: vx } };
}

describe('a fork', () => {
  const flown = flyTroubled(FREEZES, 'flying', [BY_HAND]);
  const forked = fork(flown.record);

  it('[RE7] is, up to the failure, what happened, and from then on the same as a table with a healthy source whose crew gets up there', () => {
    const again = flyTroubled(HEALTHY, 'flying', [BY_HAND], FAILS);
    expect(forked.after).toBe(FAILS / 60);
    expect(forked.happened).toEqual(pathOf(flown));
    expect(forked.forked).toEqual(pathOf(again));
    const common = Math.floor(FAILS / 15) + 1;
    expect(forked.forked.heights.slice(0, common)).toEqual(forked.happened.heights.slice(0, common));
    expect(forked.forked.heights).not.toEqual(forked.happened.heights);
    const { crew: _crew, belief: _belief, ...card } = viewTable(again.table, 'm1').scorecard!;
    expect(forked.card).toEqual(card);
    const { angle, vx, vy } = again.table.run.flight;
    expect(forked.last).toEqual({ angle, vx, vy });
  });

  it('[RE7] does not depend on what people did after the failure', () => {
    const { 400: _late, ...early } = BY_HAND;
    for (const late of [{}, { 300: [{ kind: 'abort' }] }, { 310: [{ kind: 'hold' }] }] as Script[]) {
      const other = flyTroubled(FREEZES, 'flying', [{ ...early, ...late }]);
      const { happened, ...rest } = fork(other.record);
      const { happened: _happened, ...expected } = forked;
      expect(rest).toEqual(expected);
      expect(happened.heights.length).toBeGreaterThan(FAILS / 15);
    }
  });

  it('[RE7] is of the last descent, whatever was flown at the table before', () => {
    const twice = flyTroubled(FREEZES, 'flying', [{ 30: [{ kind: 'setThrust', percent: 0 }] }, BY_HAND]);
    const { happened, forked: path, card } = fork(twice.record);
    expect(happened).toEqual(forked.happened);
    expect(path).toEqual(forked.forked);
    expect(card).toEqual(forked.card);
  });

  it('[RE7] is of the descent that begins by itself after a crew has asked for another', () => {
    const lines: RecordLine[] = [];
    const kept = openKeptTable({ plan: FREEZES, model: playedModel, write: (line) => lines.push(line) });
    for (const name of ['Ada', 'Bo']) joinTable(kept, name);
    askTable(kept, 'm1', { kind: 'takeSeat', seat: 'lead' });
    askTable(kept, 'm2', { kind: 'takeSeat', seat: 'site' });
    askTable(kept, 'm1', { kind: 'begin' });
    const { state } = kept.table;
    for (const descent of [1, 2]) {
      while (state.descents < descent || state.stage !== 'resolved') stepKeptTable(kept);
      if (descent === 1) askTable(kept, 'm1', { kind: 'again' });
    }
    const { record } = flyTroubled(FREEZES, 'lead', [{}]);
    expect(fork({ header: record.header, lines })).toEqual(fork(record));
  });

  it('[RE7] of a descent that stand-ins flew differs by the failure alone: it is the descent without one', () => {
    const asleep = flyTroubled(FREEZES, 'lead', [{}]);
    const healthy = flyTroubled(HEALTHY, 'lead', [{}]);
    expect(fork(asleep.record).forked).toEqual(pathOf(healthy));
  });

  it('[RE7] of a descent by orders goes on with the orders of the stand-in', () => {
    const ordered = laid({ start: 'low', seed: 2, sensorTrouble: 'seeded', mode: 'by orders' });
    const healthy = { ...ordered, setup: { ...ordered.setup, faults: [] } };
    const script: Script = { 40: [{ kind: 'orderDescentRate', tenths: 9 }] };
    const { record } = flyTroubled(ordered, 'flying', [script]);
    expect(fork(record, ordered).forked).toEqual(pathOf(flyTroubled(healthy, 'flying', [script], FAILS)));
  });

  it('[RE8] is refused for another plan, without an end, and where the change makes no difference', () => {
    const { record } = flown;
    expect(codeOf(record, laid({ start: 'low', seed: 8, sensorTrouble: 'seeded' }))).toBe('record/other-setup');
    const cut = { ...record, lines: record.lines.slice(0, -1) };
    expect(codeOf(cut)).toBe('record/not-at-rest');
    expect(codeOf(record, FREEZES, 'velocityRadar')).toBe('record/nothing-changed');
    const aborted = flyTroubled(FREEZES, 'flying', [{ 10: [{ kind: 'abort' }] }]);
    expect(aborted.table.run.flight.tick).toBeLessThan(FAILS);
    expect(codeOf(aborted.record)).toBe('record/nothing-changed');
    // also where the clock of the table ran on while the descent was on hold
    const held = flyTroubled(FREEZES, 'flying', [{ 5: [{ kind: 'hold' }], 10: [{ kind: 'abort' }] }], Infinity, 400);
    expect(codeOf(held.record)).toBe('record/nothing-changed');
  });

  it('[RE8] is refused where the descent, flown again as it was, is not the one recorded', () => {
    const lines = flown.record.lines.filter((line) => line.line === 'mark' || line.content.kind !== 'setTilt');
    expect(codeOf({ ...flown.record, lines })).toBe('record/not-as-recorded');
  });
});
