import { describe, expect, it } from 'vitest';
import { nextUniform, seedRandom } from '../../../engine/math/index.ts';
import {
  SEATS,
  createTable,
  playedModel,
  stepTable,
  viewTable,
  type Command,
  type Table,
} from '../../../engine/table/index.ts';
import { choiceOfDrill, DRILLS, layDrill } from '../../../levels/index.ts';
import { askJoin, commandTable, dropMember, joinTable, returnMember } from '../../support/askTable.ts';
import { drawnPress } from '../../support/drawnPress.ts';
import { NOTHING_JUDGED } from '../../support/nothingJudged.ts';

const IDS = ['m1', 'm2', 'm3', 'm4', 'm5', 'm6', 'm7'];

/** A drill with a crew at the seats, a facilitator and one who watches; played by what the seed draws. `look` comes between any two ticks. */
function play(at: number, seed: number, look: (table: Table) => void): void {
  const drill = DRILLS[at % DRILLS.length]!;
  const plan = layDrill(drill, choiceOfDrill(drill, seed));
  if (!plan.ok) throw new Error('a drill of ours is laid out');
  const table = createTable({ plan: plan.value, model: { ...playedModel, scorecard: () => NOTHING_JUDGED } });
  const random = seedRandom(seed);
  SEATS.forEach((name) => joinTable(table, { name }));
  askJoin(table, 'Fay', 'facilitator');
  joinTable(table, { name: 'Wim' });
  SEATS.forEach((seat, i) => commandTable(table, `m${i + 1}`, { kind: 'takeSeat', seat }));
  commandTable(table, 'm6', { kind: 'begin' });
  const others: readonly (readonly [string, Command])[] = [
    ['m6', { kind: 'sendInject', inject: drill.events[0]?.id ?? '' }],
    ['m6', { kind: 'delayInject', inject: drill.events[0]?.id ?? '', seconds: 3 }],
    ['m6', { kind: 'bookmark', text: 'here' }],
    ['m6', { kind: 'resume' }],
    ['m6', { kind: 'setPace', pace: 0.5 }],
    ['m6', { kind: 'showClip', from: 0, to: 2 }],
    ['m3', { kind: 'nameCause', source: 'altimeter', cause: 'noData' }],
    ['m3', { kind: 'realign' }],
    ['m2', { kind: 'leaveSeat' }],
    ['m2', { kind: 'takeSeat', seat: 'flying' }],
    ['m1', { kind: 'letIn', member: 'm7' }],
    ['m7', { kind: 'washHot', word: 'odd', thing: 'one thing' }],
  ];
  for (let i = 0; i < 900; i += 1) {
    const drawn = nextUniform(random);
    const share = (drawn % 0.1) / 0.1;
    if (drawn < 0.1) commandTable(table, ...drawnPress(random));
    else if (drawn < 0.2) commandTable(table, ...(others[Math.floor(others.length * share)] ?? others[0]!));
    if (i === 750) commandTable(table, 'm6', { kind: 'end' });
    look(table);
    // now and then somebody is away for long enough that a stand-in takes over
    if (i % 300 === 20) dropMember(table, i < 300 ? 'm2' : 'm1');
    if (i % 300 === 250) returnMember(table, i < 300 ? 'm2' : 'm1');
    stepTable(table);
  }
}

const viewsOf = (table: Table) => IDS.map((id) => viewTable(table, id));

/** The same table, of which nobody has ever seen anything. */
function unseen({ state, run, ...rest }: Table): Table {
  return { ...rest, state: structuredClone(state), run: { ...run } };
}

describe('a view', () => {
  it('[TA60] shows the same at a table that is looked at all the time as at one that is looked at now for the first time', () => {
    let looked = 0;
    let resolved = 0;
    let kept = 0;
    for (const at of DRILLS.keys()) {
      play(at, 60 + at, (table) => {
        const views = viewsOf(table);
        if (table.state.tick % 9 !== 0) return;
        expect(views).toEqual(viewsOf(unseen(table)));
        looked += 1;
        resolved += Number(table.state.stage === 'resolved');
        // what nothing happened to is the very same
        kept += Number(viewTable(table, 'm5').talk === views[4]?.talk);
      });
    }
    expect(looked).toBe(100 * DRILLS.length);
    expect(resolved).toBeGreaterThan(20);
    expect(kept).toBe(looked);
  });
});
