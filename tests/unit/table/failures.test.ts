import { describe, expect, it } from 'vitest';
import type { Judgment } from '../../../engine/estimate/index.ts';
import {
  createTable,
  playedModel,
  stepTable,
  viewTable,
  type Scorecard,
  type Table,
} from '../../../engine/table/index.ts';
import { TICK_RATE } from '../../../engine/world/index.ts';
import { commandTable, joinTable } from '../../support/askTable.ts';
import { laid } from '../../support/planChoice.ts';

/** The altimeter of this ground freezes after 4.9 s: seed 2 of seeded trouble, from the low start. */
function withPersonAtSensors(): Table {
  const table = createTable({ plan: laid({ start: 'low', seed: 2, sensorTrouble: 'seeded' }), model: playedModel });
  joinTable(table, { name: 'Ada' });
  commandTable(table, 'm1', { kind: 'takeSeat', seat: 'sensors' });
  commandTable(table, 'm1', { kind: 'begin' });
  return table;
}

function judge(table: Table, judgment: Judgment): void {
  expect(commandTable(table, 'm1', { kind: 'judgeSource', source: 'altimeter', judgment }).ok).toBe(true);
}

function cardOf(table: Table): Scorecard | undefined {
  while (table.state.stage === 'descending') stepTable(table);
  return viewTable(table, 'm1').scorecard;
}

describe('the scorecard of a descent by instruments', () => {
  it('[TA29] says what failed, when, and how long it took until somebody doubted it', () => {
    const table = withPersonAtSensors();
    const [fault] = table.plan.setup.faults ?? [];
    const from = fault?.fromTick ?? 0;
    for (let i = 0; i < from + 90; i += 1) stepTable(table);
    judge(table, 'under check');
    for (let i = 0; i < 30; i += 1) stepTable(table);
    // a later word does not make the first one later
    judge(table, 'rejected');
    const card = cardOf(table);
    expect(card?.failures).toEqual([
      { source: 'altimeter', kind: 'freeze', after: from / TICK_RATE, doubtedAfter: 1.5 },
    ]);
    expect(card?.belief?.descentRate).toBeCloseTo(card?.contacts[0]?.arrival.descentRate ?? 0, 0);
  });

  it('[TA29] says that nobody doubted it, also where it was doubted and taken back before it failed', () => {
    const silent = cardOf(withPersonAtSensors());
    expect(silent?.failures?.[0]).not.toHaveProperty('doubtedAfter');
    const early = withPersonAtSensors();
    judge(early, 'under check');
    judge(early, 'accepted');
    expect(cardOf(early)?.failures?.[0]).not.toHaveProperty('doubtedAfter');
  });

  it('[TA29] counts the first doubt after the failure, and a doubt that stood when it came', () => {
    const again = withPersonAtSensors();
    judge(again, 'under check');
    judge(again, 'accepted');
    const from = again.plan.setup.faults?.[0]?.fromTick ?? 0;
    for (let i = 0; i < from + 60; i += 1) stepTable(again);
    judge(again, 'rejected');
    expect(cardOf(again)?.failures?.[0]).toMatchObject({ doubtedAfter: 1 });
    const standing = withPersonAtSensors();
    judge(standing, 'rejected');
    expect(cardOf(standing)?.failures?.[0]).toMatchObject({ doubtedAfter: 0 });
  });

  it('[TA29] has nothing of the kind where nothing failed', () => {
    const table = createTable({ plan: laid({ start: 'low' }), model: playedModel });
    joinTable(table, { name: 'Ada' });
    commandTable(table, 'm1', { kind: 'takeSeat', seat: 'lead' });
    commandTable(table, 'm1', { kind: 'begin' });
    const card = cardOf(table);
    expect(card).toBeDefined();
    expect(card).not.toHaveProperty('failures');
    expect(card).not.toHaveProperty('belief');
  });
});
