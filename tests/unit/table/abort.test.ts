import { describe, expect, it } from 'vitest';
import { createTable, playedModel, stepTable, viewTable, type Table } from '../../../engine/table/index.ts';
import { TICK_RATE, type DescentEvent } from '../../../engine/world/index.ts';
import { commandTable, joinTable } from '../../support/askTable.ts';
import { laid } from '../../support/planChoice.ts';

function descending(said: Parameters<typeof laid>[0] = {}): Table {
  const table = createTable({ plan: laid(said), model: playedModel });
  joinTable(table, { name: 'Ada' });
  commandTable(table, 'm1', { kind: 'takeSeat', seat: 'flying' });
  commandTable(table, 'm1', { kind: 'begin' });
  return table;
}

/** Falls with the engine off until so low [m], gives the landing up, and lets it go on to its end. */
function abortBelow(table: Table, height: number): readonly DescentEvent[] {
  commandTable(table, 'm1', { kind: 'setThrust', percent: 30 });
  while (table.run.flight.height > height) stepTable(table);
  expect(commandTable(table, 'm1', { kind: 'abort' }).ok).toBe(true);
  const events: DescentEvent[] = [];
  for (let i = 0; i < 60 * TICK_RATE && table.state.stage === 'descending'; i += 1) events.push(...stepTable(table));
  return events;
}

describe('a landing that is given up', () => {
  it.each(['trivet', 'steeple', 'bolster'])('[TA28] climbs away and is an outcome of its own: %s', (lander) => {
    const table = descending({ lander });
    const events = abortBelow(table, 40);
    const { flight, scorecard } = viewTable(table, 'm1');
    expect(flight).toMatchObject({ outcome: 'aborted', phase: 'at rest', contacts: [] });
    expect(flight.vy).toBeGreaterThan(3);
    expect(scorecard?.outcome).toBe('aborted');
    expect(events.filter(({ kind }) => kind === 'outcome')).toMatchObject([{ outcome: 'aborted' }]);
  });

  it('[TA28] is flown by nobody: thrust, tilt and a second word are refused, holding and starting over are not', () => {
    const table = descending();
    commandTable(table, 'm1', { kind: 'abort' });
    expect(viewTable(table, 'm1').aborting).toBe(true);
    for (const command of [
      { kind: 'setThrust', percent: 10 },
      { kind: 'setTilt', degrees: 3 },
      { kind: 'abort' },
    ] as const)
      expect(commandTable(table, 'm1', command)).toMatchObject({ ok: false, error: { code: 'table/aborting' } });
    expect(commandTable(table, 'm1', { kind: 'hold' }).ok).toBe(true);
    expect(commandTable(table, 'm1', { kind: 'again' }).ok).toBe(true);
    expect(viewTable(table, 'm1').aborting).toBe(false);
    expect(commandTable(table, 'm1', { kind: 'setThrust', percent: 10 }).ok).toBe(true);
  });

  it('[TA28] does not undo what is past undoing: too low and too fast it still meets the ground', () => {
    const table = descending({ start: 'high' });
    commandTable(table, 'm1', { kind: 'setThrust', percent: 0 });
    while (table.run.flight.height > 2) stepTable(table);
    commandTable(table, 'm1', { kind: 'abort' });
    for (let i = 0; i < 120 * TICK_RATE && table.state.stage === 'descending'; i += 1) stepTable(table);
    expect(viewTable(table, 'm1').flight.contacts.length).toBeGreaterThan(0);
  });

  it('[TA28] climbs by what is believed where the crew flies by instruments', () => {
    const table = descending({ sensorTrouble: 'seeded', seed: 2 });
    abortBelow(table, 40);
    expect(viewTable(table, 'm1').flight.outcome).toBe('aborted');
  });
});
