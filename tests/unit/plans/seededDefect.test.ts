import { describe, expect, it } from 'vitest';
import type { Fault } from '../../../engine/faults/index.ts';
import { createTable, playedModel, stepTable, viewTable, type Scorecard } from '../../../engine/table/index.ts';
import { LANDERS } from '../../../levels/index.ts';
import { commandTable, joinTable } from '../../support/askTable.ts';
import { laid } from '../../support/planChoice.ts';

const SEEDS = Array.from({ length: 60 }, (_, i) => i + 1);

function kindsOf(sensorTrouble: 'engine' | 'legs', lander = 'trivet'): readonly (readonly Fault[])[] {
  return SEEDS.map((seed) => laid({ lander, seed, sensorTrouble }).setup.faults ?? []);
}

/** The card of a descent that a person watches from Lead; the stand-ins are awake or asleep. */
function cardOf(seed: number, standIns: 'awake' | 'asleep'): Scorecard | undefined {
  const plan = laid({ seed, sensorTrouble: 'engine' });
  const table = createTable({ plan: { ...plan, instruments: { seed, standIns } }, model: playedModel });
  joinTable(table, { name: 'Ada' });
  commandTable(table, 'm1', { kind: 'takeSeat', seat: 'lead' });
  commandTable(table, 'm1', { kind: 'begin' });
  while (table.state.stage === 'descending') stepTable(table);
  return viewTable(table, 'm1').scorecard;
}

describe('a defect that the seed decides', () => {
  it('[LE13] of the engine is a leak or a cut-off that fails, each in a good share of the seeds', () => {
    const drawn = kindsOf('engine').map((faults) => faults.map(({ kind }) => kind).join());
    expect(new Set(drawn)).toEqual(new Set(['leak', 'cutOffFails']));
    expect(drawn.filter((kind) => kind === 'leak').length).toBeGreaterThan(15);
    expect(drawn.filter((kind) => kind === 'cutOffFails').length).toBeGreaterThan(15);
  });

  it('[LE13] of the legs is one that is softer and not shown locked, any of them', () => {
    for (const { id, legs } of LANDERS) {
      const drawn = kindsOf('legs', id);
      const which = drawn.map((faults) =>
        faults.map((fault) =>
          fault.kind === 'legSoft' || fault.kind === 'indicationAbsent' ? fault.parameters.leg : -1,
        ),
      );
      expect(which.every(([soft, absent]) => soft === absent)).toBe(true);
      expect(new Set(which.map(([soft]) => soft)).size).toBe(legs.length);
    }
  });

  it('[LE13] is told on the scorecard with what was done about it, and costs the landing where nobody does', () => {
    const leaking = SEEDS.filter((seed) => laid({ seed, sensorTrouble: 'engine' }).setup.faults?.[0]?.kind === 'leak');
    const seeds = leaking.slice(0, 6);
    const awake = seeds.map((seed) => cardOf(seed, 'awake'));
    const asleep = seeds.map((seed) => cardOf(seed, 'asleep'));
    for (const card of awake) {
      expect(card?.outcome).toBe('upright inside limit');
      expect(card?.defects).toMatchObject([{ kind: 'leak' }]);
      expect(card?.defects?.[0]?.answeredAfter).toBeGreaterThan(3);
      expect(card?.defects?.[0]?.answeredAfter).toBeLessThan(15);
    }
    for (const card of asleep) expect(card?.defects?.[0]).not.toHaveProperty('answeredAfter');
    expect(asleep.filter((card) => card?.outcome !== 'upright inside limit').length).toBeGreaterThan(2);
  });
});
