import { describe, expect, it } from 'vitest';
import type { ListedRun } from '../../../server/messages/index.ts';
import { dateOf, findRuns, openWords, shownOfFile, shownOfServer } from '../../../client/logbook/shownRun.ts';
import { headerOf } from '../../../engine/record/index.ts';
import { choiceOf, laid } from '../../support/planChoice.ts';

const DRILL: ListedRun = {
  id: 'abcdefghijkm',
  code: 'HKTVRQ',
  choice: choiceOf({ lander: 'steeple', site: 'coombe-ledge', drill: 'quiet-altimeter' }),
  drillTitle: 'Quiet altimeter',
  openedMs: new Date(2031, 4, 4, 16, 20).getTime(),
  isOpen: false,
  isKept: false,
  isPending: false,
  summary: {
    outcome: 'tipped downhill',
    descents: 2,
    people: [
      { member: 'm1', name: 'Fay', role: 'facilitator' },
      { member: 'm2', name: 'Bo', role: 'crew' },
    ],
    crew: [{ seat: 'sensors', name: 'Bo' }],
    objectives: [{ id: 'call', text: 'Call out a lost source within 5 s', rating: 'S' }],
    actions: 1,
  },
};
const { summary: _summary, drillTitle: _title, ...FREE } = DRILL;
const RUNS = [
  shownOfServer(DRILL),
  shownOfServer({ ...FREE, id: 'other', choice: choiceOf({}), openedMs: new Date(2031, 5, 9).getTime() }),
  shownOfFile({ header: headerOf(laid({ world: 'mars' })), lines: [] }, 'kept.jsonl'),
];

describe('finding a run', () => {
  it.each([
    ['by drill', 'altimeter', [0]],
    ['by date', '2031-05-04', [0]],
    ['by month', '2031-06', [1]],
    ['by seat', 'sensors', [0]],
    ['by a name, in letters large or small', 'FAY', [0]],
    ['by objective', 'lost source', [0]],
    ['by how it was rated', 'room to improve', [0]],
    ['by how it ended', 'tipped', [0]],
    ['by lander', 'steeple', [0]],
    ['by world', 'mars', [2]],
    ['by several words, all of which have to be there', 'bo coombe', [0]],
    ['by words of which one is nowhere', 'bo mars', []],
    ['without a word', '  ', [0, 1, 2]],
  ])('%s', (_, wanted, found) => {
    expect(findRuns(RUNS, wanted)).toEqual(found.map((index) => RUNS[index]));
  });
});

describe('a run of the list', () => {
  it('says who sat where, and how it ended', () => {
    expect(RUNS[0]).toMatchObject({ crew: 'Sensors Bo', ended: 'tipped downhill', date: '2031-05-04 16:20' });
  });

  it('of another version has no crew and no end to tell where it cannot be played', () => {
    expect(RUNS[1]).toMatchObject({ title: 'Free descent', crew: '', ended: 'of another version' });
  });

  it('has its date in this browser’s time, every part with two figures', () => {
    expect(dateOf(new Date(2031, 0, 2, 3, 4).getTime())).toBe('2031-01-02 03:04');
  });
});

const open = (count: number) => Array.from({ length: count }, () => ({ ...DRILL, isOpen: true }));

describe('tables that are still open', () => {
  it('are counted, and named while they are few; nothing is said where there are none', () => {
    expect(openWords([DRILL])).toBe('');
    expect(openWords([DRILL, ...open(1)])).toMatch(
      /^1 table is still open: Quiet altimeter \(HKTVRQ\)\. A run is listed once/,
    );
    expect(openWords([{ ...FREE, isOpen: true }, ...open(1)])).toMatch(
      /^2 tables are still open: Free descent \(HKTVRQ\), Quiet altimeter \(HKTVRQ\)\./,
    );
    expect(openWords(open(4))).toMatch(/^4 tables are still open\. A run/);
  });
});
