import { expect, it } from 'vitest';
import { createTable, playedModel, stepTable, viewTable } from '../../engine/table/index.ts';
import { commandTable, joinTable } from '../support/askTable.ts';
import { laid } from '../support/planChoice.ts';

it('shows what Sensors makes of a source at once, also while the clock stands', () => {
  const plan = laid({ start: 'low', seed: 2, sensorTrouble: 'seeded' });
  const table = createTable({ plan, model: playedModel });
  joinTable(table, { name: 'Ada' });
  for (const command of [
    { kind: 'takeSeat', seat: 'sensors' },
    { kind: 'begin' },
    { kind: 'hold' },
    { kind: 'judgeSource', source: 'velocityRadar', judgment: 'rejected' },
  ] as const)
    expect(commandTable(table, 'm1', command).ok).toBe(true);
  for (let tick = 0; tick < 60; tick += 1) stepTable(table);
  const { sources, rejected } = viewTable(table, 'm1');
  expect(rejected).toEqual(['velocityRadar']);
  expect(sources?.find(({ source }) => source === 'velocityRadar')).toMatchObject({
    judgment: 'rejected',
    isUsed: false,
  });
});
