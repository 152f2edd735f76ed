import { describe, expect, it } from 'vitest';
import type { Fault } from '../../../engine/faults/index.ts';
import { forkRecord } from '../../../engine/record/index.ts';
import { playedModel, viewTable, wantedFork, type Fork, type TablePlan } from '../../../engine/table/index.ts';
import { flyTroubled, type Script } from '../../support/flyTroubled.ts';
import { laid } from '../../support/planChoice.ts';

const BASE = laid({ start: 'low', seed: 2, sensorTrouble: 'legs', mode: 'by orders' });
const planWith = (...faults: readonly Fault[]): TablePlan => ({ ...BASE, setup: { ...BASE.setup, faults } });

const SOUND = planWith();
const SOFT: Fault = { source: 'legs', kind: 'legSoft', fromTick: 0, parameters: { leg: 1, factor: 0.25 } };
const UNSEEN: Fault = { source: 'legs', kind: 'indicationAbsent', fromTick: 0, parameters: { leg: 1 } };
const LEAK: Fault = { source: 'tanks', kind: 'leak', fromTick: 150, parameters: { flow: 4 } };
const BURNS_ON: Fault = { source: 'engine', kind: 'cutOffFails', fromTick: 1, parameters: {} };

/** Somebody at Flying who orders before what goes wrong, and after it. */
const ORDERS: Script = {
  40: [{ kind: 'orderDescentRate', tenths: 14 }],
  200: [{ kind: 'orderDescentRate', tenths: 18 }],
};

function fork(plan: TablePlan, part: 'engine' | 'tanks' | 'legs', script = ORDERS) {
  const { record } = flyTroubled(plan, 'flying', [script]);
  return forkRecord(record, { plan, model: playedModel }, { kind: 'part sound', part });
}

function flown(plan: TablePlan, part: 'engine' | 'tanks' | 'legs'): Fork {
  const forked = fork(plan, part);
  if (!forked.ok) throw new Error(forked.error.reason);
  return forked.value;
}

/** What the card says that is judged, of a table without the fault whose crew gets up after so long. */
function soundCard(after: number) {
  const { table } = flyTroubled(SOUND, 'flying', [ORDERS], Math.round(after * 60));
  const { crew: _crew, belief: _belief, ...card } = viewTable(table, 'm1').scorecard!;
  return card;
}

const wantedAfter = (...faults: readonly Fault[]) =>
  wantedFork(flyTroubled(planWith(...faults), 'flying', [ORDERS]).table)?.change;

describe('a fork with a sound part', () => {
  it.each([
    ['legs', [SOFT, UNSEEN]],
    ['tanks', [LEAK]],
    ['engine', [BURNS_ON]],
  ] as const)('[RE12] %s: is the descent without the fault, from which the crew gets up there', (part, faults) => {
    const forked = flown(planWith(...faults), part);
    expect(forked.card).toEqual(soundCard(forked.after));
  });

  it('[RE12] of a soft leg parts at the contact, so that the same arrival meets sound legs', () => {
    const { after, happened, forked, card } = flown(planWith(SOFT, UNSEEN), 'legs');
    expect(forked).toEqual(happened);
    expect(Math.abs(after - happened.contact!.after)).toBeLessThanOrEqual(1 / 60);
    const soft = viewTable(flyTroubled(planWith(SOFT), 'flying', [ORDERS]).table, 'm1').scorecard!;
    expect(soft.strokeUsed[1]).toBeGreaterThan(card.strokeUsed[1]!);
  });

  it('[RE12] of a leak parts when it begins, and does not depend on what people did after that', () => {
    const forked = flown(planWith(LEAK), 'tanks');
    expect(forked.after * 60).toBeGreaterThanOrEqual(150);
    expect(forked.after * 60).toBeLessThanOrEqual(152);
    const { 200: _late, ...early } = ORDERS;
    const other = fork(planWith(LEAK), 'tanks', early);
    expect(other.ok && other.value.forked).toEqual(forked.forked);
    expect(forked.card.propellantLeft).toBeGreaterThan(0);
  });

  it('[TA40] is flown by itself after a descent with a defect, but for a leg that is only not shown locked', () => {
    expect(wantedAfter(UNSEEN, SOFT)).toEqual({ kind: 'part sound', part: 'legs' });
    expect(wantedAfter(BURNS_ON)).toEqual({ kind: 'part sound', part: 'engine' });
    expect(wantedAfter(UNSEEN)).toBeUndefined();
  });

  it('[RE8] is refused where nothing was wrong with the part, and where what was wrong changes no flight', () => {
    expect(fork(planWith(LEAK), 'legs')).toMatchObject({ error: { code: 'record/nothing-changed' } });
    expect(fork(planWith(UNSEEN), 'legs')).toMatchObject({ error: { code: 'record/nothing-changed' } });
  });
});
