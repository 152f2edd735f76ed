import { describe, expect, it } from 'vitest';
import { stepTable, viewTable, type Seat, type Table } from '../../../engine/table/index.ts';
import type { PollAnswer } from '../../../engine/talk/index.ts';
import { commandTable } from '../../support/askTable.ts';
import { AT, beginCrew, runTable } from '../../support/crewTable.ts';
import { plainPlan } from '../../support/plainTable.ts';

const call = (table: Table, question: 'go' | 'stay' = 'go') =>
  commandTable(table, AT.lead, { kind: 'callPoll', question });
const answer = (table: Table, seat: Seat, given: PollAnswer, reason = '') =>
  commandTable(table, AT[seat], { kind: 'answerPoll', answer: given, reason });
const decide = (table: Table, decision: PollAnswer) => commandTable(table, AT.lead, { kind: 'decide', decision });
const pollAt = (table: Table, seat: Seat) => viewTable(table, AT[seat]).talk.poll;

function land(table: Table): void {
  commandTable(table, AT.flying, { kind: 'setThrust', percent: 0 });
  while (table.state.stage === 'descending') stepTable(table);
}

describe('a poll', () => {
  it('[TK4] shows each seat its own answer, and all answers once all are in', () => {
    const table = beginCrew();
    expect(call(table).ok).toBe(true);
    answer(table, 'flying', 'go');
    answer(table, 'sensors', 'noGo', 'no height');
    expect(pollAt(table, 'flying')?.answers).toEqual([{ seat: 'flying', byStandIn: false, answer: 'go', reason: '' }]);
    expect(pollAt(table, 'lead')).toMatchObject({ answers: [], isIn: false, unanswered: ['propellant', 'site'] });
    answer(table, 'flying', 'noGo', 'too fast');
    answer(table, 'propellant', 'go');
    answer(table, 'site', 'go');
    expect(pollAt(table, 'lead')?.answers.map((one) => [one.seat, one.answer, one.reason])).toEqual([
      ['flying', 'noGo', 'too fast'],
      ['sensors', 'noGo', 'no height'],
      ['propellant', 'go', ''],
      ['site', 'go', ''],
    ]);
    expect(pollAt(table, 'site')?.isIn).toBe(true);
    expect(answer(table, 'flying', 'go')).toMatchObject({ error: { code: 'table/poll-in' } });
  });

  it('[TK4] is called and decided by who decides, answered by the other seats, one at a time', () => {
    const table = beginCrew();
    expect(commandTable(table, AT.site, { kind: 'callPoll', question: 'go' })).toMatchObject({
      error: { code: 'table/not-deciding' },
    });
    expect(answer(table, 'flying', 'go')).toMatchObject({ error: { code: 'table/no-poll' } });
    expect(decide(table, 'go')).toMatchObject({ error: { code: 'table/no-poll' } });
    call(table);
    expect(call(table)).toMatchObject({ error: { code: 'table/poll-open' } });
    expect(answer(table, 'lead', 'go')).toMatchObject({ error: { code: 'table/poll-own' } });
    expect(answer(table, 'flying', 'stay')).toMatchObject({ error: { code: 'table/answer' } });
    expect(answer(table, 'flying', 'go', 'x'.repeat(41))).toMatchObject({ error: { code: 'table/reason' } });
    expect(decide(table, 'stay')).toMatchObject({ error: { code: 'table/answer' } });
    expect(decide(table, 'noGo').ok).toBe(true);
    expect(pollAt(table, 'site')).toMatchObject({ decision: 'noGo', isIn: false });
    runTable(table, 481);
    expect(pollAt(table, 'site')).toBeUndefined();
    expect(call(table).ok).toBe(true);
    expect(table.state.talk.polls).toHaveLength(2);
  });

  it('[TK4] asks to go before the lander is down, and to stay after, also at rest', () => {
    const table = beginCrew({ plan: plainPlan });
    expect(call(table, 'stay')).toMatchObject({ error: { code: 'table/poll-question' } });
    land(table);
    expect(viewTable(table, AT.lead).talk.question).toBe('stay');
    expect(call(table, 'go')).toMatchObject({ error: { code: 'table/poll-question' } });
    expect(call(table, 'stay').ok).toBe(true);
    expect(answer(table, 'site', 'noStay', 'it sinks').ok).toBe(true);
    // no answer counts as no: to stay, all are heard
    expect(decide(table, 'stay')).toMatchObject({ error: { code: 'table/poll-waits' } });
    for (const seat of ['flying', 'sensors', 'propellant'] as const) answer(table, seat, 'stay');
    expect(decide(table, 'stay').ok).toBe(true);
  });

  it('[TK4] is in the log: who was asked what, each answer, what was decided', () => {
    const table = beginCrew();
    call(table);
    answer(table, 'site', 'go');
    decide(table, 'noGo');
    expect(table.state.talk.log.map(({ seat, what }) => [seat, what])).toEqual([
      ['lead', { kind: 'callPoll', question: 'go' }],
      ['site', { kind: 'answerPoll', answer: 'go', reason: '' }],
      ['lead', { kind: 'decide', decision: 'noGo' }],
    ]);
    // who has not seen an answer does not read it in the log
    expect(viewTable(table, AT.flying).talk.log.map(({ kind }) => kind)).toEqual(['callPoll', 'decide']);
  });
});
