import { describe, expect, it } from 'vitest';
import { nextUniform, seedRandom } from '../../../engine/math/index.ts';
import { SOURCES } from '../../../engine/sensors/index.ts';
import {
  FLIGHT_MODES,
  SEATS,
  createTable,
  playedModel,
  stepTable,
  viewTable,
  type Command,
  type TablePlan,
} from '../../../engine/table/index.ts';
import type { Drill } from '../../../engine/drill/index.ts';
import { choiceOfDrill, DRILLS, layDrill, SITES } from '../../../levels/index.ts';
import { askJoin, commandTable, joinTable } from '../../support/askTable.ts';
import { drawnPress } from '../../support/drawnPress.ts';
import { laid } from '../../support/planChoice.ts';
import { trueGround, trueNumbers } from '../../support/trueNumbers.ts';
import { NOTHING_JUDGED } from '../../support/nothingJudged.ts';

/** Every number anywhere in a value. */
function numbersIn(value: unknown): readonly number[] {
  if (typeof value === 'number') return [value];
  return typeof value === 'object' && value !== null ? Object.values(value).flatMap(numbersIn) : [];
}

function laidDrill(drill: Drill, seed: number): TablePlan {
  const plan = layDrill(drill, choiceOfDrill(drill, seed));
  if (!plan.ok) throw new Error('a drill of ours is laid out');
  return plan.value;
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
        if (nextUniform(random) < 0.1) commandTable(table, ...drawnPress(random));
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

  it('[TA43] [TA45] of a drill shows crew, observers and the room screen nothing true, and nothing of an inject but what it tells them', () => {
    let looked = 0;
    let dealt = 0;
    for (const [i, drill] of DRILLS.entries()) {
      const seed = 31 + i;
      const plan = laidDrill(drill, seed);
      const table = createTable({ plan, model: { ...playedModel, scorecard: () => NOTHING_JUDGED } });
      const random = seedRandom(seed);
      const draw = (count: number) => Math.floor(count * nextUniform(random));
      // m1 to m5 sit at the seats, m6 facilitates
      SEATS.forEach((name) => joinTable(table, { name }));
      askJoin(table, 'Fay', 'facilitator');
      askJoin(table, 'Ola', 'observer');
      askJoin(table, 'Wall', 'room screen');
      SEATS.forEach((seat, at) => commandTable(table, `m${at + 1}`, { kind: 'takeSeat', seat }));
      commandTable(table, 'm6', { kind: 'begin' });
      const ground = new Set(trueGround(plan));
      // a name that an objective, a rule or a poll has too gives nothing away
      const known = ['go', 'stay', ...[...drill.objectives, ...drill.ruleCard].map(({ id }) => id)];
      const hidden = drill.events.flatMap(({ id, title, visible, groundTruth, responses, note }) => [
        ...(known.includes(id) ? [] : [`"${id}"`]),
        title,
        visible,
        groundTruth,
        ...responses.map(({ text }) => text),
        ...(note === undefined ? [] : [note]),
      ]);
      const controls: readonly Command[] = [
        { kind: 'sendInject', inject: drill.events[draw(drill.events.length)]?.id ?? '' },
        { kind: 'delayInject', inject: drill.events[0]?.id ?? '', seconds: 3 },
        { kind: 'observe', sign: 'improve', topic: 'saying', text: 'A note that stays here.' },
        { kind: 'setConduct', conduct: draw(2) === 0 ? 'turns' : 'continuous' },
        { kind: 'turnOver' },
        { kind: 'hold' },
        { kind: 'resume' },
        { kind: 'resume' },
      ];
      while (table.state.stage === 'descending' && table.state.tick < 6000) {
        if (nextUniform(random) < 0.05) commandTable(table, ...drawnPress(random));
        if (nextUniform(random) < 0.03)
          commandTable(table, 'm6', controls[draw(controls.length)] ?? { kind: 'resume' });
        stepTable(table);
        if (table.state.tick % 40 !== 0 || table.state.stage !== 'descending') continue;
        const truth = new Set([...trueNumbers(table.run.flight), ...ground]);
        const told = table.state.events?.told ?? [];
        for (const [at, id] of ['m1', 'm2', 'm3', 'm4', 'm5', 'm7', 'm8'].entries()) {
          const view = viewTable(table, id);
          const display = SEATS[at] ?? 'room';
          expect(view.plan).toMatchObject({ seed: 0, choice: { seed: 0 } });
          expect(numbersIn(view).filter((value) => truth.has(value))).toEqual([]);
          const text = JSON.stringify(view);
          expect(hidden.filter((words) => text.includes(words))).toEqual([]);
          const others = told.filter(({ to }) => !to.includes(display)).map((card) => card.text);
          const own = told.filter(({ to }) => to.includes(display)).map((card) => card.text);
          expect(others.filter((words) => !own.includes(words) && text.includes(words))).toEqual([]);
          expect(text).not.toMatch('stays here');
          looked += 1;
          dealt += view.dealt.length;
        }
        expect(viewTable(table, 'm6').control?.truth).toEqual(table.run.flight);
      }
    }
    expect(looked).toBeGreaterThan(500);
    expect(dealt).toBeGreaterThan(20);
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
