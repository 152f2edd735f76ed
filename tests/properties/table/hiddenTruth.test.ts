import { describe, expect, it } from 'vitest';
import { nextUniform, seedRandom } from '../../../engine/math/index.ts';
import { JUDGMENTS } from '../../../engine/estimate/index.ts';
import { SOURCES } from '../../../engine/sensors/index.ts';
import {
  FLIGHT_MODES,
  SEATS,
  createTable,
  playedModel,
  stepTable,
  viewTable,
  type Command,
} from '../../../engine/table/index.ts';
import { SITES } from '../../../levels/index.ts';
import { commandTable, joinTable } from '../../support/askTable.ts';
import { laid } from '../../support/planChoice.ts';
import { trueGround, trueNumbers } from '../../support/trueNumbers.ts';
import { NOTHING_JUDGED } from '../../support/nothingJudged.ts';

/** Every number anywhere in a value. */
function numbersIn(value: unknown): readonly number[] {
  if (typeof value === 'number') return [value];
  return typeof value === 'object' && value !== null ? Object.values(value).flatMap(numbersIn) : [];
}

/** A press of somebody at random. */
function pressOf(random: ReturnType<typeof seedRandom>): readonly [string, Command] {
  const draw = (count: number) => Math.floor(count * nextUniform(random));
  const presses: readonly (readonly [string, Command])[] = [
    ['m2', { kind: 'setTilt', degrees: draw(21) - 10 }],
    ['m4', { kind: 'setThrust', percent: draw(60) }],
    [
      'm3',
      {
        kind: 'judgeSource',
        source: SOURCES[draw(SOURCES.length)] ?? 'altimeter',
        judgment: JUDGMENTS[draw(3)] ?? 'accepted',
      },
    ],
    ['m2', { kind: 'orderDescentRate', tenths: draw(40) }],
    ['m2', { kind: 'orderDrift', tenths: draw(21) - 10 }],
    ['m2', { kind: 'orderLean', degrees: draw(21) - 10 }],
    ['m2', { kind: 'callOut', sentence: 'motion', to: 'all' }],
    ['m3', { kind: 'callOut', sentence: 'heightAge', to: 'all' }],
    ['m3', { kind: 'callOut', sentence: 'differs', source: SOURCES[draw(SOURCES.length)] ?? 'altimeter', to: 'lead' }],
    ['m4', { kind: 'callOut', sentence: 'usable', to: 'all' }],
    ['m5', { kind: 'callOut', sentence: draw(2) === 0 ? 'limit' : 'slope', to: 'all' }],
    ['m1', { kind: 'callPoll', question: draw(2) === 0 ? 'go' : 'stay' }],
    ['m1', { kind: 'decide', decision: 'go' }],
    ['m1', { kind: 'hold' }],
    ['m1', { kind: 'resume' }],
  ];
  return presses[draw(presses.length)] ?? ['m1', { kind: 'resume' }];
}

describe('a descent by instruments', () => {
  it('[TA27] shows nobody a true number of itself or of its ground before it is at rest, whatever the crew does', () => {
    let looked = 0;
    let heard = 0;
    let told = 0;
    for (const [i, site] of SITES.entries()) {
      const seed = 11 + i;
      const mode = FLIGHT_MODES[i % 2] ?? 'by hand';
      const plan = laid({ site: site.id, start: 'middle', seed, mode, sensorTrouble: 'seeded' });
      const table = createTable({ plan, model: { ...playedModel, scorecard: () => NOTHING_JUDGED } });
      const random = seedRandom(seed);
      for (const name of ['Ada', 'Bo', 'Cy', 'Di', 'Ed', 'Fay']) joinTable(table, { name });
      SEATS.forEach((seat, at) => commandTable(table, `m${at + 1}`, { kind: 'takeSeat', seat }));
      commandTable(table, 'm1', { kind: 'begin' });
      const ground = new Set(trueGround(plan));
      expect(ground.size).toBeGreaterThan(50);
      while (table.state.stage === 'descending' && table.state.tick < 6000) {
        if (nextUniform(random) < 0.1) commandTable(table, ...pressOf(random));
        const events = stepTable(table);
        if (table.state.tick % 20 !== 0 || table.state.stage !== 'descending') continue;
        expect(events).toEqual([]);
        const truth = new Set([...trueNumbers(table.run.flight), ...ground]);
        for (const id of ['m1', 'm2', 'm3', 'm4', 'm5', 'm6']) {
          const view = viewTable(table, id);
          expect(view.plan).toMatchObject({ seed: 0, choice: { seed: 0 } });
          expect(numbersIn(view).filter((value) => truth.has(value))).toEqual([]);
          looked += 1;
          heard += view.talk.calls.reduce((sum, { values }) => sum + values.length, 0);
        }
      }
      // at rest everybody reads the truth
      const truth = new Set(trueNumbers(table.run.flight));
      if (table.state.stage === 'resolved')
        told += numbersIn(viewTable(table, 'm6')).filter((value) => truth.has(value)).length;
    }
    expect(looked).toBeGreaterThan(1000);
    expect(heard).toBeGreaterThan(1000);
    expect(told).toBeGreaterThan(20);
  });

  it('[TA27] shows what the sources say to Sensors, and to nobody else', () => {
    const table = createTable({ plan: laid({ seed: 3, sensorTrouble: 'seeded' }), model: playedModel });
    for (const name of ['Ada', 'Bo']) joinTable(table, { name });
    commandTable(table, 'm1', { kind: 'takeSeat', seat: 'sensors' });
    commandTable(table, 'm2', { kind: 'takeSeat', seat: 'lead' });
    commandTable(table, 'm2', { kind: 'begin' });
    for (let i = 0; i < 60; i += 1) stepTable(table);
    expect(viewTable(table, 'm1').sources?.map(({ source }) => source)).toEqual(SOURCES);
    expect(viewTable(table, 'm2').sources).toBeUndefined();
  });
});
