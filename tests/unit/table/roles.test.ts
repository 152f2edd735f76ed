import { describe, expect, it } from 'vitest';
import { hashValue } from '../../../engine/math/hashValue.ts';
import {
  PERMISSIONS,
  createTable,
  judgeCommand,
  viewTable,
  type Command,
  type Table,
} from '../../../engine/table/index.ts';
import { askJoin, commandTable, joinTable } from '../../support/askTable.ts';
import { beginCrew } from '../../support/crewTable.ts';
import { plainModel, plainPlan } from '../../support/plainTable.ts';

/** m1 facilitator, m2 Lead, m3 Flying, m4 crew without a seat, m5 evaluator, m6 observer, m7 room screen. */
function setTable(stage: 'gathering' | 'descending'): Table {
  const table = createTable({ plan: plainPlan, model: plainModel });
  askJoin(table, 'Fay', 'facilitator');
  for (const name of ['Ada', 'Bo', 'Cy']) joinTable(table, { name });
  askJoin(table, 'Eve', 'observer');
  askJoin(table, 'Ola', 'observer');
  askJoin(table, 'Wall', 'room screen');
  commandTable(table, 'm1', { kind: 'setRole', member: 'm5', role: 'evaluator' });
  commandTable(table, 'm2', { kind: 'takeSeat', seat: 'lead' });
  commandTable(table, 'm3', { kind: 'takeSeat', seat: 'flying' });
  if (stage === 'descending') commandTable(table, 'm1', { kind: 'begin' });
  return table;
}

const EVERYBODY = ['m1', 'm2', 'm3', 'm4', 'm5', 'm6', 'm7'];
const may = ({ state }: Table, command: Command) =>
  EVERYBODY.filter((id) => judgeCommand(state, id, command).ok).join(' ');

describe('at a table with a facilitator', () => {
  it('[TA41] the facilitator runs it: begins, paces, lets in, moves, removes and hands over, and nobody else does', () => {
    const table = setTable('gathering');
    expect(may(table, { kind: 'begin' })).toBe('m1');
    expect(may(table, { kind: 'setPace', pace: 0.5 })).toBe('m1');
    expect(may(table, { kind: 'setConduct', conduct: 'turns' })).toBe('m1');
    expect(may(table, { kind: 'setRole', member: 'm4', role: 'observer' })).toBe('m1');
    expect(may(table, { kind: 'remove', member: 'm4' })).toBe('m1');
    expect(may(table, { kind: 'setLock', locked: true })).toBe('m1');
    expect(may(table, { kind: 'handOverTable', member: 'm4' })).toBe('m1');
    expect(may(table, { kind: 'deal', member: 'm4', seat: 'site' })).toBe('m1 m2');
  });

  it('[TA41] only crew take seats, and only who sits or facilitates holds the clock', () => {
    expect(may(setTable('gathering'), { kind: 'takeSeat', seat: 'site' })).toBe('m2 m3 m4');
    const table = setTable('descending');
    expect(may(table, { kind: 'hold' })).toBe('m1 m2 m3');
    commandTable(table, 'm2', { kind: 'hold' });
    expect(may(table, { kind: 'resume' })).toBe('m1');
    expect(may(table, { kind: 'abort' })).toBe('m2');
    expect(may(table, { kind: 'end' })).toBe('m1');
  });

  it('[TA41] there is one facilitator, who passes the part on and watches from then on', () => {
    const table = setTable('gathering');
    expect(askJoin(table, 'Gus', 'facilitator')).toMatchObject({ ok: false, error: { code: 'table/facilitated' } });
    expect(commandTable(table, 'm1', { kind: 'handOverTable', member: 'm5' }).ok).toBe(true);
    expect(viewTable(table, 'm5').you).toMatchObject({ role: 'facilitator', runs: true });
    expect(viewTable(table, 'm1').you).toMatchObject({ role: 'observer', runs: false });
    expect(may(table, { kind: 'begin' })).toBe('m5');
  });

  it('[TA42] anybody calls the real-world stop; then all stands, and nothing but lifting and ending it is done', () => {
    for (const id of EVERYBODY) {
      const table = setTable('descending');
      expect(commandTable(table, id, { kind: 'stop' }).ok).toBe(true);
      expect(viewTable(table, 'm3').stoppedBy).toBe(table.state.members.find((member) => member.id === id)?.name);
      for (const kind of Object.keys(PERMISSIONS) as Command['kind'][]) {
        if (['stop', 'liftStop', 'end', 'leaveSeat'].includes(kind)) continue;
        // what is asked does not matter: it is refused before that is looked at
        expect(judgeCommand(table.state, 'm1', { kind } as Command)).toMatchObject({
          error: { code: 'table/stopped' },
        });
      }
      expect(commandTable(table, 'm1', { kind: 'liftStop' }).ok).toBe(true);
      expect(viewTable(table, 'm3')).toMatchObject({ held: true });
    }
  });

  it('[TA43] facilitator and evaluator alone see what is so', () => {
    const table = setTable('descending');
    const seeing = EVERYBODY.filter((id) => viewTable(table, id).control !== undefined);
    expect(seeing).toEqual(['m1', 'm5']);
  });

  it('[TA43] only the control side notes observations, and evaluators rate without dealing or leading', () => {
    const table = setTable('descending');
    const observe = { kind: 'observe', sign: 'improve', topic: 'saying', text: 'No age was said.' } as const;
    expect(may(table, observe)).toBe('m1 m5');
    expect(may(table, { kind: 'bookmark', text: '' })).toBe('m1 m5');
    commandTable(table, 'm1', { kind: 'end' });
    expect(may(table, { kind: 'setDebriefStep', step: 'hot wash' })).toBe('m1');
    expect(may(table, { kind: 'setGoal', text: 'Say the age.' })).toBe('m1 m5');
    expect(may(table, { kind: 'washHot', word: 'odd', thing: '' })).toBe(EVERYBODY.join(' '));
  });
});

describe('a table without a facilitator', () => {
  it('[TA62] is locked by whoever decides, lets nobody else join, and is as before when it is opened again', () => {
    const table = beginCrew({ seats: ['lead', 'flying'] });
    const before = hashValue(table.state);
    expect(may(table, { kind: 'setLock', locked: true })).toBe('m1');
    commandTable(table, 'm1', { kind: 'setLock', locked: true });
    expect(viewTable(table, 'm3').locked).toBe(true);
    expect(askJoin(table, 'Gus', 'crew')).toMatchObject({ ok: false, error: { code: 'table/locked' } });
    commandTable(table, 'm1', { kind: 'setLock', locked: false });
    // what was never locked, records of earlier tables above all, stays the same to the bit
    expect(hashValue(table.state)).toBe(before);
    expect(askJoin(table, 'Gus', 'crew').ok).toBe(true);
  });

  it('[TA62] loses whom the one who decides sends away, but never who opened it', () => {
    const table = beginCrew({ seats: ['flying', 'lead'] });
    commandTable(table, 'm1', { kind: 'leaveSeat' });
    expect(may(table, { kind: 'remove', member: 'm3' })).toBe('m2');
    expect(commandTable(table, 'm2', { kind: 'remove', member: 'm1' })).toMatchObject({
      error: { code: 'table/opener' },
    });
    commandTable(table, 'm2', { kind: 'remove', member: 'm3' });
    expect(table.state.members.map(({ id }) => id)).toEqual(['m1', 'm2', 'm4', 'm5']);
  });
});
