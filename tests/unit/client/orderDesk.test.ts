import { beforeEach, describe, expect, it } from 'vitest';
import { CommandDesk } from '../../../client/controls/commands.ts';
import { ACTS } from '../../../client/controls/keyboard.ts';
import { openLocalTable, type TableLink } from '../../../client/net/index.ts';
import { plainModel, plainPlan } from '../../support/plainTable.ts';

let link: TableLink;
let desk: CommandDesk;

const refusals: string[] = [];

function openTable(mode: 'by hand' | 'by orders'): void {
  const plan = { ...plainPlan, choice: { ...plainPlan.choice, mode } };
  const clock = { now: () => 0, nextFrame: () => () => undefined };
  const opened = openLocalTable({ plan, model: plainModel, name: 'Ada', clock });
  if (!opened.ok) throw new Error(opened.error.reason);
  link = opened.value;
  refusals.length = 0;
  desk = new CommandDesk(link, (reason) => refusals.push(reason));
  void link.command({ kind: 'takeSeat', seat: 'flying' });
  void link.command({ kind: 'begin' });
}

beforeEach(() => openTable('by orders'));

describe('the desk of a descent by orders', () => {
  it('steps the descent rate by fifths of a meter a second up to two of them, and by halves beyond', () => {
    const given: (number | undefined)[] = [];
    for (let i = 0; i < 12; i += 1) {
      ACTS.thrustLess(desk);
      given.push(link.view?.orders?.descentRateTenths);
    }
    expect(given).toEqual([2, 4, 6, 8, 10, 12, 14, 16, 18, 20, 25, 30]);
    ACTS.thrustMore(desk);
    expect(link.view?.orders?.descentRateTenths).toBe(25);
    desk.orders.descentRateTo(33);
    ACTS.thrustMore(desk);
    expect(link.view?.orders?.descentRateTenths).toBe(30);
    ACTS.engineOff(desk);
    expect(link.view?.orders?.descentRateTenths).toBe(0);
    ACTS.thrustMore(desk);
    expect(link.view?.orders?.descentRateTenths).toBe(-2);
  });

  it('goes no farther than may be ordered, and is refused nothing', () => {
    for (let i = 0; i < 30; i += 1) ACTS.thrustLess(desk);
    for (let i = 0; i < 40; i += 1) ACTS.leanRight(desk);
    expect(link.view?.orders).toMatchObject({ descentRateTenths: 60, driftTenths: 50 });
    ACTS.driftOrLean(desk);
    for (let i = 0; i < 40; i += 1) ACTS.leanRight(desk);
    expect(link.view?.orders).toMatchObject({ across: 'lean', leanDeg: -30 });
    expect(refusals).toEqual([]);
  });

  it('moves whichever is held to either side, sets it to none, and changes to what there is of the other', () => {
    ACTS.leanLeft(desk);
    expect(link.view?.orders).toMatchObject({ across: 'drift', driftTenths: -2 });
    ACTS.driftOrLean(desk);
    expect(link.view?.orders).toMatchObject({ across: 'lean', leanDeg: 0 });
    ACTS.leanLeft(desk);
    expect(link.view?.orders).toMatchObject({ across: 'lean', leanDeg: 2 });
    ACTS.upright(desk);
    expect(link.view?.orders?.leanDeg).toBe(0);
    // the plain world moves down alone
    ACTS.driftOrLean(desk);
    expect(link.view?.orders).toMatchObject({ across: 'drift', driftTenths: 0 });
  });

  it('leaves the keys of a descent by hand as they are', () => {
    openTable('by hand');
    ACTS.thrustMore(desk);
    ACTS.driftOrLean(desk);
    expect(link.view?.commanded.thrustPercent).toBe(55);
    expect(link.view?.orders).toBeUndefined();
    expect(refusals).toEqual([]);
  });
});
