import { describe, expect, it } from 'vitest';
import type { Drill } from '../../../engine/drill/index.ts';
import { playedModel, SEATS, type Seat, type Table } from '../../../engine/table/index.ts';
import { findDrill, layDrill } from '../../../levels/index.ts';
import { commandTable } from '../../support/askTable.ts';
import { AT, beginCrew, runTable } from '../../support/crewTable.ts';

/** At half pace: ticks in a second of the clock. */
const SECOND = 30;

const QUIET = findDrill('quiet-altimeter')!;

/** A drill with people at these seats; nobody sits at Lead. */
function without(
  drill: Drill,
  {
    seats = ['propellant'],
    standIns = 'awake',
  }: { readonly seats?: readonly Seat[]; readonly standIns?: 'awake' | 'asleep' } = {},
): Table {
  const laid = layDrill(drill);
  if (!laid.ok || laid.value.instruments === undefined) throw new Error('a drill of ours is laid out');
  const plan = { ...laid.value, instruments: { ...laid.value.instruments, standIns } };
  return beginCrew({ seats, plan, model: playedModel });
}

/** Until this is so; fails where it never is. */
function runUntil(table: Table, isSo: () => boolean): void {
  while (!isSo()) {
    expect(table.state.stage).toBe('descending');
    runTable(table, 1);
  }
}

const rowOf = (id: string) => QUIET.events.find((row) => row.id === id)!;
const linesOf = (table: Table, kind: string) => table.state.talk.log.filter(({ what }) => what.kind === kind);

/** Up to the poll that an inject of the drill asks Lead for. */
function polled(table: Table): Table {
  runUntil(table, () => table.state.talk.polls.length > 0);
  return table;
}

describe('a stand-in at Lead', () => {
  it('[TK10] polls five seconds after words on its screen that ask for it, and goes on where all are for it', () => {
    const table = polled(without(QUIET));
    const told = table.state.events!.rows['room-asks']!.sentTicks[0]!;
    expect(linesOf(table, 'callPoll')).toMatchObject([{ seat: 'lead' }]);
    const waited = linesOf(table, 'callPoll')[0]!.descentTick - told;
    expect(waited).toBeGreaterThanOrEqual(5 * SECOND);
    // it looks twice a second of the descent
    expect(waited).toBeLessThanOrEqual(5 * SECOND + 30);
    commandTable(table, AT.propellant, { kind: 'answerPoll', answer: 'go', reason: '' });
    runUntil(table, () => table.state.talk.polls[0]!.decided !== undefined);
    expect(table.state.talk.polls[0]!.decided).toMatchObject({ seat: 'lead', decision: 'go' });
    runTable(table, 10 * SECOND);
    expect(table.state.abortedAt).toBeUndefined();
  });

  it('[TK10] gives the landing up after one no-go, in the times that are stated', () => {
    const table = polled(without(QUIET));
    commandTable(table, AT.propellant, { kind: 'answerPoll', answer: 'noGo', reason: 'low' });
    runUntil(table, () => table.state.abortedAt !== undefined);
    const [poll] = table.state.talk.polls;
    expect(poll!.decided).toMatchObject({ seat: 'lead', decision: 'noGo' });
    expect(poll!.decided!.tick - poll!.allIn!.tick).toBeGreaterThanOrEqual(3 * SECOND);
    expect(table.state.abortedAt! - poll!.decided!.tick).toBeGreaterThanOrEqual(2 * SECOND);
    expect(table.state.abortedAt! - poll!.decided!.tick).toBeLessThanOrEqual(2 * SECOND + 30);
    expect(linesOf(table, 'abort')).toMatchObject([{ seat: 'lead' }]);
    expect(linesOf(table, 'abort')[0]).not.toHaveProperty('member');
  });

  it('[TK10] takes no answer for no, after 25 seconds', () => {
    const table = polled(without(QUIET));
    const called = table.state.talk.polls[0]!.tick;
    runUntil(table, () => table.state.talk.polls[0]!.decided !== undefined);
    expect(table.state.talk.polls[0]!.decided).toMatchObject({ decision: 'noGo' });
    expect(table.state.tick - called).toBeGreaterThanOrEqual(25 * SECOND);
  });

  it('[TK10] does nothing in a crew that is asleep, nor where a person leads', () => {
    for (const table of [
      without(QUIET, { standIns: 'asleep' }),
      without(QUIET, { seats: ['lead'] }),
      without(QUIET, { seats: SEATS }),
    ]) {
      while (table.state.stage === 'descending') runTable(table, 60);
      expect(table.state.talk.polls).toEqual([]);
      expect(table.state.abortedAt).toBeUndefined();
    }
  });

  it('[TK10] keeps the rules of the card that its screen tells: no spot marked, and a height that is unsure', () => {
    const ledge = findDrill('coombe-ledge')!;
    // nobody at Site marks a spot, and nobody is polled
    const table = without({ ...ledge, events: [] }, { seats: ['site'] });
    runUntil(table, () => table.state.abortedAt !== undefined);
    expect(table.run.believed!.clearance).toBeLessThan(60);
    // three seconds below it, at 3 m/s
    expect(table.run.believed!.clearance).toBeGreaterThan(45);
    const marked = without({ ...ledge, events: [] }, { seats: ['site'] });
    commandTable(marked, AT.site, { kind: 'markSpot', meters: 0, approach: 'either way' });
    while (marked.state.stage === 'descending') runTable(marked, 60);
    expect(marked.state.abortedAt).toBeUndefined();
    const card = {
      id: 'unsure',
      text: 'Unsure: abort.',
      abort: { when: 'heightUnsure', below: 100, over: 0.1 },
    } as const;
    const unsure = without({ ...QUIET, ruleCard: [card], events: [] });
    runUntil(unsure, () => unsure.state.abortedAt !== undefined);
    expect(unsure.run.believed!.clearance).toBeLessThan(100);
  });

  it('[TK10] asks whether to stay once the lander is down', () => {
    const table = without({ ...QUIET, events: [] });
    while (table.state.stage === 'descending') runTable(table, 1);
    expect(table.state.talk.polls).toMatchObject([{ question: 'stay', by: { seat: 'lead' } }]);
  });

  it('[TK10] gives up where an inject asks for it, unless what makes that needless is done by then', () => {
    const flicker = { ...rowOf('flicker'), trigger: { on: 'height', meters: 100 } } as const;
    const events = [flicker, rowOf('two-heights')];
    const asked = (): Table => {
      const table = without({ ...QUIET, events }, { seats: ['sensors'] });
      runUntil(table, () => table.state.events!.rows['two-heights']!.state === 'sent');
      return table;
    };
    const heeded = asked();
    runTable(heeded, 6 * SECOND);
    expect(heeded.state.abortedAt).toBeDefined();
    const spared = asked();
    commandTable(spared, AT.sensors, { kind: 'judgeSource', source: 'altimeter', judgment: 'rejected' });
    runTable(spared, 6 * SECOND);
    expect(spared.state.abortedAt).toBeUndefined();
  });
});
