import { describe, expect, it } from 'vitest';
import type { Fault } from '../../../engine/faults/index.ts';
import { playedModel, stepTable, viewTable, type Seat, type Table } from '../../../engine/table/index.ts';
import { commandTable } from '../../support/askTable.ts';
import { AT, beginCrew, runTable } from '../../support/crewTable.ts';
import { laid } from '../../support/planChoice.ts';
import { plainModel, plainPlan } from '../../support/plainTable.ts';

const callsAt = (table: Table, id: string) => viewTable(table, id).talk.calls;

/** By instruments, with a person at one seat alone. */
function aloneAt(seat: Seat, faults: readonly Fault[], asleep = false): Table {
  const plan = laid({ seed: 5, sensorTrouble: 'seeded' });
  return beginCrew({
    seats: [seat],
    plan: {
      ...plan,
      setup: { ...plan.setup, faults },
      ...(asleep && { instruments: { seed: 5, standIns: 'asleep' as const } }),
    },
    model: playedModel,
  });
}

describe('a stand-in that is spoken to', () => {
  it('[TK7] reads back after three seconds, also on hold', () => {
    const table = beginCrew({ seats: ['lead'] });
    commandTable(table, AT.lead, { kind: 'hold' });
    commandTable(table, AT.lead, { kind: 'say', text: 'stand by', to: 'site' });
    runTable(table, 179);
    expect(callsAt(table, AT.lead)[0]?.waitsFor).toEqual(['site']);
    runTable(table, 1);
    expect(callsAt(table, AT.lead)[0]?.waitsFor).toEqual([]);
    expect(callsAt(table, AT.lead)[0]?.isConfirmed).toBe(false);
  });

  it('[TK7] answers a question with what its seat is shown', () => {
    const table = beginCrew({ seats: ['lead'] });
    runTable(table, 10);
    commandTable(table, AT.lead, { kind: 'callOut', sentence: 'askUsable', to: 'propellant' });
    runTable(table, 299);
    expect(callsAt(table, AT.lead)).toHaveLength(1);
    runTable(table, 1);
    expect(callsAt(table, AT.lead)[1]).toMatchObject({ from: 'propellant', to: 'lead', sentence: 'usable' });
    // 100 kg less what half of 3 kN burned in 310 ticks, at the burn of a hover of 1000 kg
    const perSecond = 1 / (300 * 9.80665);
    const burned = ((1500 * 309) / 60) * perSecond;
    expect(callsAt(table, AT.lead)[1]?.values[0]).toBeCloseTo((100 - burned) / (1620 * perSecond), 1);
  });

  it('[TK7] confirms what it said itself two seconds after it was read back', () => {
    const table = beginCrew({ seats: ['lead'] });
    commandTable(table, AT.lead, { kind: 'callOut', sentence: 'askMotion', to: 'flying' });
    runTable(table, 300);
    runTable(table, 300);
    expect(callsAt(table, AT.lead)[1]).toMatchObject({ waitsFor: ['lead'], isConfirmed: false });
    commandTable(table, AT.lead, { kind: 'readBack', callout: 2 });
    runTable(table, 119);
    expect(callsAt(table, AT.lead)[1]?.isConfirmed).toBe(false);
    runTable(table, 1);
    expect(callsAt(table, AT.lead)[1]?.isConfirmed).toBe(true);
  });

  it('[TK7] answers a poll after four seconds, with a person at any one seat', () => {
    for (const seat of ['lead', 'flying', 'site'] as const) {
      const table = beginCrew({ seats: [seat] });
      commandTable(table, AT[seat], { kind: 'callPoll', question: 'go' });
      runTable(table, 239);
      expect(viewTable(table, AT[seat]).talk.poll?.unanswered).toHaveLength(4);
      runTable(table, 1);
      const poll = viewTable(table, AT[seat]).talk.poll;
      expect(poll?.answers.map(({ answer, byStandIn }) => `${answer} ${byStandIn}`)).toEqual(Array(4).fill('go true'));
    }
  });

  it('[TK7] says no go, and why, where its seat shows that something is wrong', () => {
    const margin = plainModel.createMarginGauge(plainPlan)({} as never);
    const outside = { ...margin, predicted: { ...margin.predicted!, utilisation: 1.1 } };
    const table = beginCrew({
      seats: ['lead'],
      // 8 kg last 14.5 s in a hover of 1000 kg
      plan: { ...plainPlan, setup: { ...plainPlan.setup, propellant: 8, start: { ...plainPlan.setup.start, y: 1e4 } } },
      model: { ...plainModel, createMarginGauge: () => () => outside },
    });
    commandTable(table, AT.lead, { kind: 'callPoll', question: 'go' });
    runTable(table, 240);
    expect(viewTable(table, AT.lead).talk.poll?.answers).toEqual([
      { seat: 'flying', byStandIn: true, answer: 'noGo', reason: '', because: 'marginOutside' },
      { seat: 'sensors', byStandIn: true, answer: 'go', reason: '' },
      { seat: 'propellant', byStandIn: true, answer: 'noGo', reason: '', because: 'propellantLow' },
      { seat: 'site', byStandIn: true, answer: 'noGo', reason: '', because: 'marginOutside' },
    ]);
  });

  it('[TK7] hears nothing more of a call that was closed', () => {
    const table = beginCrew({ seats: ['lead', 'flying'] });
    commandTable(table, AT.lead, { kind: 'say', text: 'ready?', to: 'flying' });
    commandTable(table, AT.flying, { kind: 'readBack', callout: 1 });
    commandTable(table, AT.lead, { kind: 'confirm', callout: 1 });
    runTable(table, 600);
    expect(table.state.talk.log.map(({ what }) => what.kind)).toEqual(['say', 'readBack', 'confirm']);
  });
});

describe('a stand-in by instruments', () => {
  const silence: Fault = { kind: 'noData', source: 'altimeter', fromTick: 300, parameters: {} };

  it('[TK8] calls out a source that is lost, to whoever decides, and once', () => {
    for (const seat of ['lead', 'flying'] as const) {
      const table = aloneAt(seat, [silence]);
      runTable(table, 900);
      const lost = callsAt(table, AT[seat]).filter(({ source }) => source === 'altimeter');
      expect(lost).toMatchObject([{ from: 'sensors', to: seat, sentence: 'noData', byStandIn: true }]);
      // the check takes its time to call it lost, and the stand-in two seconds more, four looks
      expect(lost[0]?.after).toBeGreaterThan(5 + 1.5);
      expect(lost[0]?.after).toBeLessThan(5 + 6);
    }
  });

  it('[TK8] calls out that a source is back', () => {
    const table = aloneAt('lead', [{ ...silence, toTick: 660 }]);
    runTable(table, 1100);
    const of = callsAt(table, AT.lead).filter(({ source }) => source === 'altimeter');
    expect(of.map(({ sentence }) => sentence)).toEqual(['noData', 'restored']);
  });

  it('[TK8] calls out heights at each halving, seconds of propellant, the limit and the slope', () => {
    const table = aloneAt('lead', []);
    while (table.state.stage === 'descending') {
      stepTable(table);
      const { length } = table.state.talk.calls;
      for (let callout = 1; callout <= length; callout += 1)
        commandTable(table, AT.lead, { kind: 'readBack', callout });
    }
    const { calls } = table.state.talk;
    const sentences = calls.map(({ said }) => ('sentence' in said ? said.sentence : ''));
    expect(sentences.filter((one) => one === 'limit')).toHaveLength(1);
    expect(sentences.filter((one) => one === 'slope')).toHaveLength(1);
    const heights = calls.flatMap(({ said }) =>
      'sentence' in said && said.sentence === 'motion' ? [said.values[0]!] : [],
    );
    expect(heights.length).toBeGreaterThan(2);
    heights.slice(1).forEach((height, i) => {
      expect(height).toBeLessThanOrEqual(heights[i]! / 2);
    });
  });

  it('[TK8] says nothing again that still waits to be read back', () => {
    const table = aloneAt('lead', []);
    while (table.state.stage === 'descending') stepTable(table);
    const sentences = table.state.talk.calls.map(({ said }) => ('sentence' in said ? said.sentence : ''));
    expect(sentences).toContain('motion');
    expect(new Set(sentences).size).toBe(sentences.length);
  });

  it('[TK8] keeps silent where a person sits, in a crew of stand-ins that is asleep, and where everything is shown', () => {
    const attended = beginCrew({
      plan: { ...laid({ seed: 5, sensorTrouble: 'seeded' }) },
      model: playedModel,
    });
    const asleep = aloneAt('lead', [silence], true);
    const shown = beginCrew({ seats: ['lead'], plan: laid({ seed: 5 }), model: playedModel });
    for (const table of [attended, asleep, shown]) {
      runTable(table, 1200);
      expect(table.state.talk.calls).toEqual([]);
    }
  });
});
