import { describe, expect, it } from 'vitest';
import { dueOf, nextRow, stateWords, triggerWords } from '../../../client/panels/control/eventWords.ts';
import type { Trigger } from '../../../engine/drill/index.ts';
import type { RowView, TableView } from '../../../engine/table/index.ts';
import { parseDrill } from '../../../levels/index.ts';
import { EVERY_PART } from '../../support/drillFile.ts';
import { viewOf } from '../../support/flightView.ts';

const parsed = parseDrill(EVERY_PART);
if (!parsed.ok) throw new Error('The drill of the tests cannot be read');
const drill = parsed.value;

const waiting = (id: string, more: Partial<RowView> = {}): RowView => ({ id, state: 'waiting', seen: [], ...more });

/** Ten seconds after the start, so high, sinking at 2 m/s. */
const control = (height: number, rows: readonly RowView[]): NonNullable<TableView['control']> => ({
  truth: viewOf({ tick: 600, height, vy: -2 }).flight,
  rows,
});
const rowOf = (id: string) => drill.events.find((row) => row.id === id)!;

describe('when an inject comes, in words', () => {
  it.each<[Trigger, string]>([
    [{ on: 'time', seconds: 75 }, 'at T+ 01:15'],
    [{ on: 'height', meters: 60 }, 'at 60\u202fm'],
    [{ on: 'inject', inject: 'by-time', seconds: 8 }, '8\u202fs after “Something happens”'],
    [{ on: 'state', quantity: 'drift', above: 0.8 }, 'when the drift is over 0.8\u202fm/s'],
    [{ on: 'state', quantity: 'leanDeg', above: 12 }, 'when the lean is over 12°'],
    [{ on: 'state', quantity: 'propellantSeconds', below: 40 }, 'when propellant is under 40\u202fs'],
    [{ on: 'hand' }, 'by hand'],
  ])('%j', (trigger, words) => {
    expect(triggerWords(trigger, drill)).toBe(words);
  });
});

describe('how long it is until then', () => {
  it('is by the height at the rate now, by the clock, or by the inject before it', () => {
    // 50 m is 10 m below 60 m, at 2 m/s
    const rows = [waiting('by-height'), waiting('by-time', { state: 'sent', sentAfter: 9 }), waiting('by-inject')];
    const at = control(60, rows);
    expect(dueOf(rowOf('by-height'), waiting('by-height'), at)).toEqual({ seconds: 5, height: 50, isAbout: true });
    // three seconds after one that was sent a second ago; 4 m lower then
    expect(dueOf(rowOf('by-inject'), waiting('by-inject'), at)).toEqual({ seconds: 2, height: 56, isAbout: false });
    // put off: that counts, and its own trigger no more
    expect(dueOf(rowOf('by-height'), waiting('by-height', { dueIn: 10 }), at)).toMatchObject({
      seconds: 10,
      height: 40,
    });
  });

  it('is not known for a state, for a hand, and after what was not sent', () => {
    const at = control(60, [waiting('by-time'), waiting('by-inject')]);
    for (const id of ['by-rise', 'by-hand', 'by-inject']) expect(dueOf(rowOf(id), waiting(id), at)).toBeUndefined();
  });

  it('says which comes next: the one that is due first, else the first that waits', () => {
    const both = [waiting('by-height'), waiting('by-time', { state: 'sent', sentAfter: 9 }), waiting('by-inject')];
    expect(nextRow(drill, control(60, both))).toBe('by-inject');
    expect(nextRow(drill, control(52, both))).toBe('by-height');
    expect(nextRow(drill, control(60, [waiting('by-hand')]))).toBe('by-hand');
    expect(nextRow(drill, control(60, [waiting('by-hand', { state: 'skipped' })]))).toBeUndefined();
  });

  it('is put into words with the state of the row', () => {
    const due = { seconds: 4.2, height: 50, isAbout: true };
    expect(stateWords(waiting('x'), due)).toBe('in about 5\u202fs');
    expect(stateWords(waiting('x'), { ...due, isAbout: false })).toBe('in 5\u202fs');
    expect(stateWords(waiting('x'), undefined)).toBe('waits');
    expect(stateWords(waiting('x', { state: 'sent', sentAfter: 65 }), undefined)).toBe('sent T+ 01:05');
    expect(stateWords(waiting('x', { state: 'not needed' }), undefined)).toBe('not needed');
  });
});
