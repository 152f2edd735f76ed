import { beforeEach, describe, expect, it } from 'vitest';
import {
  STAND_IN_AFTER_TICKS,
  createTable,
  judgeChoosing,
  paceNow,
  stepTable,
  viewTable,
  type Command,
  type Pace,
  type Table,
} from '../../../engine/table/index.ts';
import { commandTable, dropMember, joinTable } from '../../support/askTable.ts';
import { plainModel, plainPlan } from '../../support/plainTable.ts';

let table: Table;

const ask = (id: string, command: Command) => commandTable(table, id, command);
const setPace = (id: string, pace: Pace) => ask(id, { kind: 'setPace', pace });

beforeEach(() => {
  table = createTable({ plan: { ...plainPlan, choice: { ...plainPlan.choice, pace: 0.5 } }, model: plainModel });
  for (const name of ['Ada', 'Bo', 'Cy']) joinTable(table, { name });
});

describe('the pace', () => {
  it('[TA33] is that of the plan until it is set, and slows a descent that runs alone', () => {
    expect(viewTable(table, 'm1').pace).toBe(0.5);
    expect(paceNow(table.state)).toBe(1);
    ask('m1', { kind: 'takeSeat', seat: 'flying' });
    ask('m1', { kind: 'begin' });
    expect(paceNow(table.state)).toBe(0.5);
    expect(setPace('m1', 0.25).ok).toBe(true);
    expect(viewTable(table, 'm2').pace).toBe(0.25);
    expect(paceNow(table.state)).toBe(0.25);
    ask('m1', { kind: 'again' });
    expect(paceNow(table.state)).toBe(0.25);
  });

  it('[TA33] changes nothing in what a tick does', () => {
    ask('m1', { kind: 'takeSeat', seat: 'flying' });
    ask('m1', { kind: 'begin' });
    for (let i = 0; i < 30; i += 1) stepTable(table);
    const { flight } = viewTable(table, 'm1');
    expect(flight.tick).toBe(30);
    // by the arithmetic of the plain world: 30 ticks at 54 % of thrust
    expect(flight.y).toBeCloseTo(100 - 30 * 0.46, 9);
  });

  it('[TA33] is set by whoever decides: Lead, else the next seat that is taken', () => {
    ask('m1', { kind: 'takeSeat', seat: 'site' });
    expect(setPace('m2', 1)).toMatchObject({ ok: false, error: { code: 'table/not-seated' } });
    expect(setPace('m1', 1).ok).toBe(true);
    ask('m2', { kind: 'takeSeat', seat: 'flying' });
    expect(setPace('m1', 0.5)).toMatchObject({ ok: false, error: { code: 'table/not-deciding' } });
    expect(setPace('m2', 0.5).ok).toBe(true);
    ask('m3', { kind: 'takeSeat', seat: 'lead' });
    expect(setPace('m2', 1).ok).toBe(false);
    expect(setPace('m3', 1).ok).toBe(true);
  });

  it('[TA33] refuses any other value, and names the right ones', () => {
    ask('m1', { kind: 'takeSeat', seat: 'flying' });
    expect(setPace('m1', 2 as Pace)).toMatchObject({
      error: { code: 'table/out-of-range', reason: 'The pace is one of 1, 0.5, 0.25; got 2.' },
    });
  });

  it('[TA13] leaves a member who is away the same time on the wall: fewer ticks at a slower pace', () => {
    ask('m1', { kind: 'takeSeat', seat: 'flying' });
    ask('m1', { kind: 'begin' });
    setPace('m1', 0.25);
    ask('m1', { kind: 'setThrust', percent: 60 });
    dropMember(table, 'm1');
    for (let i = 0; i < STAND_IN_AFTER_TICKS / 4 - 1; i += 1) stepTable(table);
    expect(viewTable(table, 'm1').commanded.thrustPercent).toBe(60);
    stepTable(table);
    expect(viewTable(table, 'm1').commanded.thrustPercent).toBe(50);
  });
});

describe('what a table plays', () => {
  it('[TA50] may be chosen anew by whoever decides, until the first descent begins', () => {
    expect(judgeChoosing(table.state, 'm1')).toMatchObject({ code: 'table/not-seated' });
    ask('m1', { kind: 'takeSeat', seat: 'site' });
    ask('m2', { kind: 'takeSeat', seat: 'lead' });
    expect(judgeChoosing(table.state, 'm1')).toMatchObject({ code: 'table/not-deciding' });
    expect(judgeChoosing(table.state, 'm2')).toBeUndefined();
    expect(judgeChoosing(table.state, 'm9')).toMatchObject({ code: 'table/not-here' });
    ask('m1', { kind: 'begin' });
    expect(judgeChoosing(table.state, 'm2')).toMatchObject({ code: 'table/stage' });
  });
});
