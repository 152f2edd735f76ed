import { describe, expect, it } from 'vitest';
import { playedModel, SEATS, viewTable, type Table } from '../../../engine/table/index.ts';
import { CALL_RATE, fillSentence, MOST_CALLS, SENTENCES_OF, type Addressee } from '../../../engine/talk/index.ts';
import { askJoin, commandTable } from '../../support/askTable.ts';
import { AT, beginCrew, runTable } from '../../support/crewTable.ts';
import { laid } from '../../support/planChoice.ts';

const callsAt = (table: Table, id: string) => viewTable(table, id).talk.calls;
const say = (table: Table, text: string, to: Addressee = 'all') =>
  commandTable(table, AT.lead, { kind: 'say', text, to });

/** The display of Site where the ground has this slope [rad], with a limit of 0.4 m/s to the left and 1.2 to the right. */
const displayOn = (slope: number) => ({
  ...viewTable(beginCrew(), AT.site),
  siteReadings: { locked: [], legsState: 'valid' as const, limitLeft: 0.4, limitRight: 1.2, slope },
});

describe('a callout', () => {
  it('[TK1] carries the numbers of the display of its sender, at that tick', () => {
    const plan = laid({ seed: 3, sensorTrouble: 'seeded' });
    const table = beginCrew({ plan, model: playedModel });
    runTable(table, 600);
    const { flight, sources } = viewTable(table, AT.sensors);
    const off = sources?.find(({ source }) => source === 'altimeter')?.disagreement;
    expect(off).not.toBeUndefined();
    commandTable(table, AT.sensors, { kind: 'callOut', sentence: 'differs', source: 'altimeter', to: 'lead' });
    commandTable(table, AT.flying, { kind: 'callOut', sentence: 'motion', to: 'lead' });
    runTable(table, 30);
    const heard = callsAt(table, AT.lead);
    expect(heard.map(({ values }) => values)).toEqual([[off], [flight.height, -flight.vy, flight.vx]]);
    expect(heard.map(({ after }) => after)).toEqual([10, 10]);
    // what is true is another number
    expect(heard[1]?.values[0]).not.toBe(table.state.stage === 'descending' ? table.run.flight.height : NaN);
  });

  it('[TK1] says how old the height is by the last sample that it rests on, not by one of a rejected altimeter', () => {
    const table = beginCrew({ plan: laid({ seed: 3, sensorTrouble: 'seeded' }), model: playedModel });
    const age = () => fillSentence('heightAge', undefined, viewTable(table, AT.sensors))?.[0];
    runTable(table, 300);
    expect(age()).toBeLessThan(0.5);
    commandTable(table, AT.sensors, { kind: 'judgeSource', source: 'altimeter', judgment: 'rejected' });
    runTable(table, 300);
    expect(age()).toBeGreaterThanOrEqual(5);
    expect(age()).toBeLessThan(5.5);
  });

  it('[TK1] is one of the sentences of the own seat, of a source where it names one', () => {
    const table = beginCrew();
    const refused = (id: string, command: Parameters<typeof commandTable>[2]) => commandTable(table, id, command);
    expect(refused(AT.lead, { kind: 'callOut', sentence: 'motion', to: 'all' })).toMatchObject({
      ok: false,
      error: { code: 'table/other-sentence' },
    });
    expect(refused(AT.sensors, { kind: 'callOut', sentence: 'frozen', to: 'all' })).toMatchObject({
      error: { code: 'table/source', reason: 'Say of which source.' },
    });
    expect(
      refused(AT.sensors, { kind: 'callOut', sentence: 'heightAge', source: 'altimeter', to: 'all' }),
    ).toMatchObject({ error: { code: 'table/source' } });
    expect(refused(AT.sensors, { kind: 'callOut', sentence: 'heightAge', to: 'sensors' })).toMatchObject({
      error: { code: 'table/own-seat' },
    });
    expect(callsAt(table, AT.lead)).toEqual([]);
  });

  it('[TK1] may be one typed line of up to 80 characters that can be seen', () => {
    const table = beginCrew();
    expect(say(table, `  ${'x'.repeat(80)} `).ok).toBe(true);
    expect(callsAt(table, AT.site)[0]?.text).toBe('x'.repeat(80));
    expect(say(table, 'x'.repeat(81))).toMatchObject({ error: { code: 'table/line' } });
    expect(say(table, '   ')).toMatchObject({ error: { code: 'table/line' } });
    expect(say(table, 'left \u202e right')).toMatchObject({ error: { code: 'table/line' } });
  });

  it('[TK1] has at most nine sentences a seat, each for one seat', () => {
    const all = SEATS.flatMap((seat) => [...SENTENCES_OF[seat]]);
    expect(new Set(all).size).toBe(all.length);
    expect(SEATS.filter((seat) => SENTENCES_OF[seat].length > 9)).toEqual([]);
  });

  it('[TK1] says uphill what is uphill', () => {
    expect(fillSentence('limit', undefined, displayOn(0.1))).toEqual([1.2, 0.4, 1]);
    expect(fillSentence('limit', undefined, displayOn(-0.1))).toEqual([0.4, 1.2, -1]);
    expect(fillSentence('limit', undefined, viewTable(beginCrew(), AT.site))).toBeUndefined();
  });
});

describe('a loop', () => {
  it('[TK2] is closed by its sender, once every seat that was addressed has read back', () => {
    const table = beginCrew();
    say(table, 'stand by');
    const readBack = (id: string) => commandTable(table, id, { kind: 'readBack', callout: 1 });
    const confirm = (id: string) => commandTable(table, id, { kind: 'confirm', callout: 1 });
    expect(readBack(AT.lead)).toMatchObject({ error: { code: 'table/not-addressed' } });
    for (const seat of ['flying', 'sensors', 'propellant'] as const) expect(readBack(AT[seat]).ok).toBe(true);
    expect(readBack(AT.flying)).toMatchObject({ error: { code: 'table/read-back' } });
    expect(confirm(AT.lead)).toMatchObject({ error: { code: 'table/not-read-back' } });
    expect(callsAt(table, AT.lead)[0]).toMatchObject({ waitsFor: ['site'], isConfirmed: false });
    expect(readBack(AT.site).ok).toBe(true);
    expect(confirm(AT.flying)).toMatchObject({ error: { code: 'table/not-sender' } });
    runTable(table, 900);
    expect(viewTable(table, AT.site).talk.openCount).toBe(1);
    expect(viewTable(table, AT.lead).talk.open).toEqual([
      { id: 1, after: 0, from: 'lead', to: 'all', isReadBack: true },
    ]);
    expect(confirm(AT.lead).ok).toBe(true);
    expect(confirm(AT.lead)).toMatchObject({ error: { code: 'table/confirmed' } });
    expect(viewTable(table, AT.site).talk.openCount).toBe(0);
  });

  it('[TK9] is heard by its two ends alone, and what is said to all by whoever watches too', () => {
    const table = beginCrew({ seats: ['lead', 'flying', 'sensors', 'propellant'] });
    say(table, 'for one', 'flying');
    say(table, 'for all');
    const heard = (id: string) => callsAt(table, id).map(({ text }) => text);
    expect(heard(AT.flying)).toEqual(['for one', 'for all']);
    expect(heard(AT.lead)).toEqual(['for one', 'for all']);
    expect(heard(AT.sensors)).toEqual(['for all']);
    // m5 sits nowhere
    expect(heard('m5')).toEqual(['for all']);
    const lines = (id: string) => viewTable(table, id).talk.log.filter(({ kind }) => kind === 'say').length;
    expect([lines(AT.flying), lines(AT.sensors), lines('m5')]).toEqual([2, 1, 1]);
    expect(viewTable(table, AT.flying).talk.open).toEqual([]);
    expect(viewTable(table, AT.lead).talk.open).toHaveLength(2);
    askJoin(table, 'Fay', 'facilitator');
    expect(heard('m6')).toEqual(['for one', 'for all']);
    expect(lines('m6')).toBe(2);
    expect(viewTable(table, 'm6').talk.open).toHaveLength(2);
  });

  it('[TK2] stays open for whoever takes the seat over', () => {
    const table = beginCrew();
    say(table, 'mind the rim', 'site');
    commandTable(table, AT.site, { kind: 'leaveSeat' });
    runTable(table, 120);
    commandTable(table, 'm5', { kind: 'takeSeat', seat: 'site' });
    runTable(table, 600);
    expect(callsAt(table, 'm5')[0]).toMatchObject({ text: 'mind the rim', waitsFor: ['site'] });
  });
});

describe('talking', () => {
  it('[TK3] has a rate: six callouts of a seat in ten seconds, and another after them', () => {
    const table = beginCrew();
    for (let i = 0; i < CALL_RATE.calls; i += 1) expect(say(table, `line ${i}`).ok).toBe(true);
    expect(say(table, 'one more')).toMatchObject({ error: { code: 'table/calls' } });
    expect(commandTable(table, AT.site, { kind: 'say', text: 'mine', to: 'all' }).ok).toBe(true);
    runTable(table, 599);
    expect(say(table, 'one more').ok).toBe(false);
    runTable(table, 1);
    expect(say(table, 'one more').ok).toBe(true);
  });

  it('[TK3] ends with the two hundredth callout of a descent, and begins anew with the next', () => {
    const table = beginCrew();
    commandTable(table, AT.lead, { kind: 'hold' });
    for (let i = 0; i < MOST_CALLS; i += 1) {
      if (i % 6 === 0) runTable(table, 600);
      expect(say(table, `line ${i}`).ok).toBe(true);
    }
    runTable(table, 700);
    expect(say(table, 'too many')).toMatchObject({ error: { code: 'table/calls' } });
    commandTable(table, AT.lead, { kind: 'again' });
    runTable(table, 301);
    expect(viewTable(table, AT.lead).talk).toMatchObject({ calls: [], openCount: 0, log: [] });
    expect(say(table, 'anew').ok).toBe(true);
  });
});

describe('the log of the crew', () => {
  it('[TK6] has all that was said and done, when and by whom, and for a stand-in nobody', () => {
    const table = beginCrew({ seats: ['lead', 'flying', 'sensors', 'site'] });
    runTable(table, 60);
    say(table, 'usable?', 'propellant');
    commandTable(table, AT.site, { kind: 'stateLimit', hundredths: 120 });
    commandTable(table, AT.site, { kind: 'markSpot', meters: 4, approach: 'either way' });
    commandTable(table, AT.lead, { kind: 'hold' });
    runTable(table, 200);
    commandTable(table, AT.lead, { kind: 'resume' });
    commandTable(table, AT.lead, { kind: 'abort' });
    const { log } = table.state.talk;
    expect(log.map(({ what }) => what.kind)).toEqual([
      'say',
      'stateLimit',
      'markSpot',
      'hold',
      'readBack',
      'resume',
      'abort',
    ]);
    expect(log[1]).toEqual({
      tick: 60,
      descentTick: 60,
      seat: 'site',
      member: AT.site,
      what: { kind: 'stateLimit', hundredths: 120 },
    });
    // read back by a stand-in, while the descent stood
    expect(log[4]).toEqual({
      tick: 240,
      descentTick: 60,
      seat: 'propellant',
      what: { kind: 'readBack', callout: 1 },
      call: 1,
    });
  });

  it('[TK6] has what stand-ins do at their seats', () => {
    const leak = { kind: 'leak', source: 'tanks', fromTick: 60, parameters: { flow: 1 } } as const;
    const plan = laid({ seed: 5, sensorTrouble: 'seeded' });
    const table = beginCrew({
      seats: ['lead'],
      plan: { ...plan, setup: { ...plan.setup, faults: [leak] } },
      model: playedModel,
    });
    runTable(table, 900);
    const line = table.state.talk.log.find(({ what }) => what.kind === 'shutLine');
    expect(line).toMatchObject({ seat: 'propellant', what: { shut: true } });
    expect(line?.member).toBeUndefined();
  });

  it('[TK6] shows what Sensors puts under check to Sensors alone', () => {
    const plan = laid({ seed: 3, sensorTrouble: 'seeded' });
    const table = beginCrew({ plan, model: playedModel });
    commandTable(table, AT.sensors, { kind: 'judgeSource', source: 'altimeter', judgment: 'under check' });
    commandTable(table, AT.sensors, { kind: 'judgeSource', source: 'altimeter', judgment: 'rejected' });
    const judged = (id: string) => viewTable(table, id).talk.log.map(({ judgment }) => judgment);
    expect(judged(AT.sensors)).toEqual(['under check', 'rejected']);
    expect(judged(AT.lead)).toEqual(['rejected']);
  });
});
