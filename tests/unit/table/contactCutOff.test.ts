import { describe, expect, it } from 'vitest';
import { createTable, playedModel, stepTable, viewTable } from '../../../engine/table/index.ts';
import { commandTable, joinTable } from '../../support/askTable.ts';
import { TICK_RATE } from '../../../engine/world/index.ts';
import { firstLanding } from '../../../levels/index.ts';

describe('first contact', () => {
  it('[TA21] shuts the engine down, so that a descent that nobody touches comes to a verdict within two minutes', () => {
    const table = createTable({ plan: firstLanding(1), model: playedModel });
    joinTable(table, { name: 'Ada' });
    commandTable(table, 'm1', { kind: 'takeSeat', seat: 'flying' });
    commandTable(table, 'm1', { kind: 'begin' });
    expect(table.state.commanded.thrustPercent).toBeGreaterThan(0);
    for (let i = 0; i < 120 * TICK_RATE && table.state.stage === 'descending'; i++) stepTable(table);
    expect(table.state.commanded.thrustPercent).toBe(0);
    const { scorecard } = viewTable(table, 'm1');
    expect(scorecard?.outcome).toBeDefined();
    expect(scorecard?.contacts[0]?.arrival.descentRate).toBeGreaterThan(1);
  });

  it('[TA21] leaves the crew free to open it again and hop on', () => {
    const table = createTable({ plan: firstLanding(1), model: playedModel });
    joinTable(table, { name: 'Ada' });
    commandTable(table, 'm1', { kind: 'takeSeat', seat: 'flying' });
    commandTable(table, 'm1', { kind: 'begin' });
    while (table.run.flight.touchdown === undefined) stepTable(table);
    expect(commandTable(table, 'm1', { kind: 'setThrust', percent: 100 }).ok).toBe(true);
    for (let i = 0; i < 3 * TICK_RATE; i++) stepTable(table);
    expect(table.run.flight.height).toBeGreaterThan(1);
  });
});
