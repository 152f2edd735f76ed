import { beforeEach, describe, expect, it } from 'vitest';
import {
  STAND_IN_AFTER_TICKS,
  createTable,
  stepTable,
  viewTable,
  type Command,
  type Table,
  type TablePlan,
} from '../../../engine/table/index.ts';
import { commandTable, dropMember, joinTable, returnMember } from '../../support/askTable.ts';
import { plainModel, plainPlan } from '../../support/plainTable.ts';

const PLAN: TablePlan = { ...plainPlan, choice: { ...plainPlan.choice, mode: 'by orders' } };

let table: Table;

const ask = (id: string, command: Command) => commandTable(table, id, command);
const orders = () => viewTable(table, 'm1').orders;

function run(ticks: number): void {
  for (let i = 0; i < ticks; i += 1) stepTable(table);
}

beforeEach(() => {
  table = createTable({ plan: PLAN, model: plainModel });
  for (const name of ['Ada', 'Bo']) joinTable(table, { name });
  ask('m1', { kind: 'takeSeat', seat: 'flying' });
  ask('m1', { kind: 'begin' });
});

describe('a descent by orders', () => {
  it('[TA31] begins with the order to hold the height and to drift on, upright', () => {
    expect(orders()).toEqual({ descentRateTenths: 0, across: 'drift', driftTenths: 0, leanDeg: 0 });
    const drifting = { ...PLAN, setup: { ...PLAN.setup, start: { ...PLAN.setup.start, vx: 3.44 } } };
    const moving = { ...plainModel.createDescent(drifting).read(), vx: 3.44 };
    const model = {
      ...plainModel,
      createDescent: (plan: TablePlan) => ({ ...plainModel.createDescent(plan), read: () => moving }),
    };
    expect(createTable({ plan: drifting, model }).state.orders).toMatchObject({
      descentRateTenths: 0,
      across: 'drift',
      driftTenths: 34,
    });
  });

  it('[TA31] keeps each order until another takes its place: a drift that of a lean, a lean that of a drift', () => {
    ask('m1', { kind: 'orderDescentRate', tenths: 20 });
    ask('m1', { kind: 'orderDrift', tenths: -3 });
    expect(orders()).toMatchObject({ descentRateTenths: 20, across: 'drift', driftTenths: -3 });
    ask('m1', { kind: 'orderLean', degrees: 4 });
    run(10);
    expect(orders()).toEqual({ descentRateTenths: 20, across: 'lean', driftTenths: -3, leanDeg: 4 });
    expect(viewTable(table, 'm1').commanded.tiltDeg).toBe(4);
    ask('m1', { kind: 'orderDrift', tenths: 0 });
    expect(orders()).toMatchObject({ across: 'drift', driftTenths: 0 });
  });

  it('[TA31] begins anew with its first orders', () => {
    ask('m1', { kind: 'orderDescentRate', tenths: 33 });
    ask('m1', { kind: 'again' });
    expect(orders()?.descentRateTenths).toBe(0);
  });

  it.each([
    [{ kind: 'setThrust', percent: 50 }, 'table/by-orders', /say what to hold/],
    [{ kind: 'setTilt', degrees: 0 }, 'table/by-orders', /say what to hold/],
    [{ kind: 'orderDescentRate', tenths: 61 }, 'table/out-of-range', /from -20 to 60; got 61/],
    [{ kind: 'orderDescentRate', tenths: -21 }, 'table/out-of-range', /from -20 to 60; got -21/],
    [{ kind: 'orderDescentRate', tenths: 1.5 }, 'table/out-of-range', /whole number of tenths.* got 1.5/],
    [{ kind: 'orderDrift', tenths: -51 }, 'table/out-of-range', /from -50 to 50; got -51/],
    [{ kind: 'orderLean', degrees: 31 }, 'table/out-of-range', /from -30 to 30; got 31/],
  ] as const)('[TA31] refuses %o in words', (command, code, words) => {
    const before = structuredClone(table.state);
    expect(ask('m1', command)).toMatchObject({ ok: false, error: { code, reason: expect.stringMatching(words) } });
    expect(table.state).toEqual(before);
  });

  it('[TA31] refuses orders where a descent is flown by hand', () => {
    table = createTable({ plan: plainPlan, model: plainModel });
    joinTable(table, { name: 'Ada' });
    ask('m1', { kind: 'takeSeat', seat: 'flying' });
    ask('m1', { kind: 'begin' });
    expect(orders()).toBeUndefined();
    for (const command of [
      { kind: 'orderDescentRate', tenths: 10 },
      { kind: 'orderDrift', tenths: 0 },
      { kind: 'orderLean', degrees: 0 },
    ] as const)
      expect(ask('m1', command)).toMatchObject({ ok: false, error: { code: 'table/by-hand' } });
  });

  it('[TA31] takes orders from Flying alone, whoever sits at Propellant', () => {
    ask('m2', { kind: 'takeSeat', seat: 'propellant' });
    expect(viewTable(table, 'm1').you.holds).toEqual({ thrust: true, tilt: true });
    expect(viewTable(table, 'm2').you.holds).toEqual({ thrust: false, tilt: false });
    expect(ask('m1', { kind: 'orderDescentRate', tenths: 10 }).ok).toBe(true);
    const answer = ask('m2', { kind: 'orderDescentRate', tenths: 20 });
    expect(answer).toMatchObject({
      error: { code: 'table/not-yours', reason: 'That is for Flying to do, and you sit at Propellant.' },
    });
    expect(orders()?.descentRateTenths).toBe(10);
  });

  it('[TA32] without anybody at Flying is ordered by the stand-in, and whoever takes the seat sees and changes that', () => {
    ask('m1', { kind: 'orderLean', degrees: 10 });
    ask('m1', { kind: 'leaveSeat' });
    run(1);
    // at 100 m the stand-in comes down as fast as it ever does
    expect(orders()).toEqual({ descentRateTenths: 50, across: 'drift', driftTenths: 0, leanDeg: 0 });
    ask('m2', { kind: 'takeSeat', seat: 'flying' });
    expect(viewTable(table, 'm2').you.standInLeft).toEqual({ thrust: true, tilt: true });
    run(20);
    expect(orders()?.descentRateTenths).toBe(50);
    ask('m2', { kind: 'orderDescentRate', tenths: 15 });
    expect(viewTable(table, 'm2').you.standInLeft).toEqual({ thrust: false, tilt: true });
    ask('m2', { kind: 'orderDrift', tenths: 0 });
    expect(viewTable(table, 'm2').you.standInLeft).toBeUndefined();
  });

  it('[TA32] keeps the orders of a member who is away for three seconds, then the stand-in orders', () => {
    ask('m1', { kind: 'orderDescentRate', tenths: -5 });
    dropMember(table, 'm1');
    run(STAND_IN_AFTER_TICKS - 1);
    expect(orders()?.descentRateTenths).toBe(-5);
    run(1);
    expect(orders()?.descentRateTenths).toBeGreaterThan(0);
    returnMember(table, 'm1');
    expect(viewTable(table, 'm1').you.standInLeft).toEqual({ thrust: true, tilt: true });
  });

  it('[TA31] takes no orders once the landing is given up', () => {
    ask('m1', { kind: 'abort' });
    expect(ask('m1', { kind: 'orderDescentRate', tenths: 10 })).toMatchObject({ error: { code: 'table/aborting' } });
  });
});
