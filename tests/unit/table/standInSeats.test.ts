import { describe, expect, it } from 'vitest';
import type { Fault } from '../../../engine/faults/index.ts';
import { createTable, playedModel, stepTable, viewTable, type Table } from '../../../engine/table/index.ts';
import { commandTable, joinTable } from '../../support/askTable.ts';
import { runTable } from '../../support/crewTable.ts';
import { laid } from '../../support/planChoice.ts';

/** A landing by instruments that one person watches from Lead; the stand-ins have all other seats. */
function openFor(faults: readonly Fault[], choice: Parameters<typeof laid>[0] = {}): Table {
  const plan = laid({ seed: 5, sensorTrouble: 'seeded', ...choice });
  const table = createTable({ plan: { ...plan, setup: { ...plan.setup, faults } }, model: playedModel });
  joinTable(table, { name: 'Ada' });
  commandTable(table, 'm1', { kind: 'takeSeat', seat: 'lead' });
  commandTable(table, 'm1', { kind: 'begin' });
  return table;
}

describe('the stand-in at Propellant', () => {
  const leak: Fault = { kind: 'leak', source: 'tanks', fromTick: 60, parameters: { flow: 1 } };

  it('[TA39] shuts the line that leaks, and a person who sits there is left to see it', () => {
    const table = openFor([leak]);
    runTable(table, 900);
    expect(viewTable(table, 'm1').engine.lineShut).toBe(true);
    const attended = openFor([leak]);
    commandTable(attended, 'm1', { kind: 'takeSeat', seat: 'propellant' });
    runTable(attended, 900);
    expect(viewTable(attended, 'm1').engine.lineShut).toBe(false);
    const { gauge = 0, reckoned = 0 } = viewTable(attended, 'm1').propellantReadings ?? {};
    expect(reckoned - gauge).toBeGreaterThan(10);
  });

  it('[TA39] leaves the line open in 40 descents without a leak', () => {
    for (let seed = 1; seed <= 40; seed += 1) {
      const table = openFor([], { seed, start: 'middle' });
      while (table.state.stage === 'descending') stepTable(table);
      expect(table.state.engine).toMatchObject({ lineShut: false, cutOff: 'not armed' });
    }
  }, 180_000);

  it('[TA39] fires the cut-off at an engine that burns on after contact', () => {
    const table = openFor([{ kind: 'cutOffFails', source: 'engine', fromTick: 0, parameters: {} }], { start: 'low' });
    while (table.state.stage === 'descending' && table.state.engine.cutOff !== 'fired') stepTable(table);
    expect(table.state.engine.cutOff).toBe('fired');
    expect(table.run.flight.touchdown).toBeDefined();
  });
});

/** The probe of one leg is stuck from a tick of the descent on. */
const stuck = (fromTick: number): Fault => ({
  source: 'contactProbes',
  kind: 'bias',
  channel: 'leg1',
  fromTick,
  parameters: { size: 1, rise: 0 },
});

describe('the stand-in at Propellant, before a contact light that cannot be,', () => {
  /** From the middle start a lander is some 20 m up after seven seconds. */
  const HIGH_UP = 420;

  it('[TA39] sets cut at contact off after a second, so that the lander flies on, and fires the cut-off when it is down', () => {
    const table = openFor([stuck(HIGH_UP)], { start: 'middle', mode: 'by orders' });
    runTable(table, HIGH_UP);
    expect(table.run.flight.height).toBeGreaterThan(15);
    // a second from the light on, which comes within a tenth of a second
    runTable(table, 58);
    expect(table.state.engine.cutAtContact).toBe(true);
    runTable(table, 10);
    expect(table.state.engine).toMatchObject({ cutAtContact: false, cutOff: 'not armed' });
    while (table.state.stage === 'descending') stepTable(table);
    expect(table.run.flight).toMatchObject({ outcome: 'upright' });
    expect(table.run.flight.touchdown?.descentRate).toBeLessThan(2.5);
    expect(table.state.engine.cutOff).toBe('fired');
  });

  it('[TA39] is left to a person who sits there: with nobody to act the lander falls from there', () => {
    const table = openFor([stuck(HIGH_UP)], { start: 'middle', mode: 'by orders' });
    commandTable(table, 'm1', { kind: 'takeSeat', seat: 'propellant' });
    while (table.state.stage === 'descending') stepTable(table);
    expect(table.state.engine.cutAtContact).toBe(true);
    expect(table.run.flight.touchdown?.descentRate).toBeGreaterThan(6);
  });

  it('[TA39] does not doubt a contact of several legs where the height is wrong', () => {
    const frozen: Fault = { source: 'altimeter', kind: 'freeze', fromTick: 300, parameters: {} };
    const plan = laid({ seed: 5, sensorTrouble: 'seeded', mode: 'by orders' });
    const table = createTable({ plan: { ...plan, setup: { ...plan.setup, faults: [frozen] } }, model: playedModel });
    joinTable(table, { name: 'Ada' });
    // whoever sits at Sensors believes the altimeter to the end
    commandTable(table, 'm1', { kind: 'takeSeat', seat: 'sensors' });
    commandTable(table, 'm1', { kind: 'begin' });
    while (table.run.flight.touchdown === undefined) stepTable(table);
    expect(table.run.believed?.clearance).toBeGreaterThan(5);
    while (table.state.stage === 'descending') stepTable(table);
    expect(table.state.engine.cutAtContact).toBe(true);
  });
});

describe('the stand-in at Site', () => {
  it('[TA39] marks a flatter spot after three seconds where there is one, and none on level ground', () => {
    const table = openFor([], { site: 'coombe-ledge' });
    runTable(table, 179);
    expect(viewTable(table, 'm1').site.spot).toBeUndefined();
    runTable(table, 2);
    expect(viewTable(table, 'm1').site.spot).toBeDefined();
    while (table.state.stage === 'descending') stepTable(table);
    expect(Math.abs(table.run.flight.touchdown?.slope ?? 1)).toBeLessThan((4 * Math.PI) / 180);
    const level = openFor([]);
    runTable(level, 300);
    expect(viewTable(level, 'm1').site.spot).toBeUndefined();
  });

  it('[TA39] does nothing in a crew of stand-ins that is asleep', () => {
    const plan = laid({ site: 'coombe-ledge', seed: 5, sensorTrouble: 'seeded' });
    const table = createTable({ plan: { ...plan, instruments: { seed: 5, standIns: 'asleep' } }, model: playedModel });
    joinTable(table, { name: 'Ada' });
    commandTable(table, 'm1', { kind: 'takeSeat', seat: 'lead' });
    commandTable(table, 'm1', { kind: 'begin' });
    runTable(table, 400);
    expect(table.state.site.spot).toBeUndefined();
  });
});
