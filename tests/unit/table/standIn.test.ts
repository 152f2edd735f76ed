import { beforeEach, describe, expect, it } from 'vitest';
import {
  STAND_IN_AFTER_TICKS,
  createTable,
  stepTable,
  viewTable,
  type Seat,
  type Table,
} from '../../../engine/table/index.ts';
import { commandTable, dropMember, joinTable, leaveTable, returnMember } from '../../support/askTable.ts';
import type { ControlInput } from '../../../engine/world/index.ts';
import { plainModel, plainPlan } from '../../support/plainTable.ts';

const STAND_IN: ControlInput = { thrustPercent: 50, tiltDeg: 5 };

let table: Table;

function sit(id: string, seat: Seat): void {
  expect(commandTable(table, id, { kind: 'takeSeat', seat })).toEqual({ ok: true, value: undefined });
}

function begin(id: string): void {
  expect(commandTable(table, id, { kind: 'begin' })).toEqual({ ok: true, value: undefined });
}

function steer(id: string, input: Partial<ControlInput>): void {
  const { thrustPercent: percent, tiltDeg: degrees } = input;
  if (percent !== undefined) commandTable(table, id, { kind: 'setThrust', percent });
  if (degrees !== undefined) commandTable(table, id, { kind: 'setTilt', degrees });
}

function inputAfter(ticks: number): ControlInput {
  for (let i = 0; i < ticks; i += 1) stepTable(table);
  return viewTable(table, table.state.members[0]?.id ?? '').flight.commanded;
}

beforeEach(() => {
  table = createTable({ plan: plainPlan, model: plainModel });
  joinTable(table, { name: 'Ada' });
  joinTable(table, { name: 'Bo' });
});

describe('the stand-in', () => {
  it('[TA12] flies alone when nobody sits at Flying', () => {
    sit('m1', 'lead');
    begin('m1');
    expect(inputAfter(1)).toEqual(STAND_IN);
    expect(viewTable(table, 'm1').commanded).toEqual(STAND_IN);
  });

  it('[TA12] commands nothing while a person is at the controls', () => {
    sit('m1', 'flying');
    begin('m1');
    steer('m1', { thrustPercent: 33, tiltDeg: -7 });
    expect(inputAfter(5)).toEqual({ thrustPercent: 33, tiltDeg: -7 });
  });

  it('[TA12] takes over in the tick after a member leaves the seat, and gives back what it last commanded', () => {
    sit('m1', 'flying');
    begin('m1');
    steer('m1', { thrustPercent: 90, tiltDeg: -9 });
    expect(inputAfter(1)).toEqual({ thrustPercent: 90, tiltDeg: -9 });
    commandTable(table, 'm1', { kind: 'leaveSeat' });
    expect(inputAfter(1)).toEqual(STAND_IN);
    sit('m2', 'flying');
    expect(inputAfter(1)).toEqual(STAND_IN);
    steer('m2', { tiltDeg: 1 });
    expect(inputAfter(1)).toEqual({ thrustPercent: 50, tiltDeg: 1 });
  });

  it('[TA13] leaves the last command standing for three seconds after a line drops, then covers the seat', () => {
    sit('m1', 'flying');
    begin('m1');
    steer('m1', { thrustPercent: 60, tiltDeg: 3 });
    stepTable(table);
    dropMember(table, 'm1');
    expect(inputAfter(STAND_IN_AFTER_TICKS - 1)).toEqual({ thrustPercent: 60, tiltDeg: 3 });
    expect(inputAfter(1)).toEqual(STAND_IN);
    expect(viewTable(table, 'm1').seats[1]).toMatchObject({ seat: 'flying', name: 'Ada', connected: false });
  });

  it('[TA13] gives the control back as soon as the member returns', () => {
    sit('m1', 'flying');
    begin('m1');
    dropMember(table, 'm1');
    dropMember(table, 'm1');
    inputAfter(STAND_IN_AFTER_TICKS);
    returnMember(table, 'm1');
    steer('m1', { thrustPercent: 61, tiltDeg: 2 });
    expect(inputAfter(1)).toEqual({ thrustPercent: 61, tiltDeg: 2 });
    expect(viewTable(table, 'm1').seats[1]).toMatchObject({ name: 'Ada', connected: true });
  });

  it('[TA13] keeps the seat for the member who is away: nobody else can take it until they leave', () => {
    sit('m1', 'flying');
    dropMember(table, 'm1');
    expect(commandTable(table, 'm2', { kind: 'takeSeat', seat: 'flying' }).ok).toBe(false);
    leaveTable(table, 'm1');
    expect(commandTable(table, 'm2', { kind: 'takeSeat', seat: 'flying' }).ok).toBe(true);
  });

  it('[TA22] tells a member who was away too long what it left, until each control is set', () => {
    sit('m1', 'flying');
    begin('m1');
    steer('m1', { thrustPercent: 60, tiltDeg: 3 });
    dropMember(table, 'm1');
    inputAfter(STAND_IN_AFTER_TICKS + 1);
    returnMember(table, 'm1');
    expect(viewTable(table, 'm1')).toMatchObject({
      you: { standInLeft: { thrust: true, tilt: true } },
      commanded: STAND_IN,
    });
    // it stands, and is said, for as long as nobody sets another
    inputAfter(30);
    expect(viewTable(table, 'm1')).toMatchObject({
      you: { standInLeft: { thrust: true, tilt: true } },
      commanded: STAND_IN,
    });
    steer('m1', { thrustPercent: 60 });
    expect(viewTable(table, 'm1').you.standInLeft).toEqual({ thrust: false, tilt: true });
    steer('m1', { tiltDeg: 0 });
    expect(viewTable(table, 'm1').you.standInLeft).toBeUndefined();
  });

  it('[TA22] has left nothing to a member who was away for less than three seconds', () => {
    sit('m1', 'flying');
    begin('m1');
    dropMember(table, 'm1');
    inputAfter(STAND_IN_AFTER_TICKS - 1);
    returnMember(table, 'm1');
    inputAfter(1);
    expect(viewTable(table, 'm1').you.standInLeft).toBeUndefined();
  });

  it('[TA22] shows whoever comes to hold the controls what it left, and nobody else', () => {
    sit('m1', 'lead');
    begin('m1');
    inputAfter(10);
    expect(viewTable(table, 'm1').you.standInLeft).toBeUndefined();
    sit('m2', 'flying');
    expect(viewTable(table, 'm2').you.standInLeft).toEqual({ thrust: true, tilt: true });
    expect(viewTable(table, 'm1').you.standInLeft).toBeUndefined();
    steer('m2', { thrustPercent: 40 });
    // what one at Flying has set is not the stand-in's for the next who sits there
    commandTable(table, 'm1', { kind: 'handOver', member: 'm2' });
    inputAfter(1);
    expect(viewTable(table, 'm1').you.standInLeft).toEqual({ thrust: false, tilt: true });
  });

  it('[TA22] has left nothing once the descent is over or begins again', () => {
    sit('m1', 'lead');
    begin('m1');
    inputAfter(500);
    sit('m1', 'flying');
    expect(viewTable(table, 'm1')).toMatchObject({ stage: 'resolved' });
    expect(viewTable(table, 'm1').you.standInLeft).toBeUndefined();
    expect(commandTable(table, 'm1', { kind: 'again' }).ok).toBe(true);
    inputAfter(1);
    expect(viewTable(table, 'm1').you.standInLeft).toBeUndefined();
  });

  it('[TA20] leaves a person who begins with the engine carrying the weight and the attitude kept', () => {
    sit('m1', 'flying');
    // 1000 kg x 1.62 m/s² of 3000 N
    const first = { thrustPercent: 54, tiltDeg: 0 };
    expect(viewTable(table, 'm1').commanded).toEqual(first);
    begin('m1');
    expect(inputAfter(1)).toEqual(first);
    steer('m1', { thrustPercent: 0 });
    inputAfter(500);
    expect(commandTable(table, 'm1', { kind: 'again' }).ok).toBe(true);
    expect(viewTable(table, 'm1').commanded).toEqual(first);
  });
});
