import { describe, expect, it } from 'vitest';
import type { EventRow } from '../../../engine/drill/index.ts';
import type { Judgment } from '../../../engine/estimate/index.ts';
import { measuresOf } from '../../../engine/review/measures.ts';
import { viewTable, type Command, type Table } from '../../../engine/table/index.ts';
import { lineOf, ticksAfter } from '../../../engine/table/responses.ts';
import type { LogLine } from '../../../engine/talk/talk.ts';
import { commandTable } from '../../support/askTable.ts';
import { LEAK, ROW, setDrill, stepBy } from '../../support/plainDrill.ts';

const LEAKS: EventRow = {
  ...ROW,
  id: 'leak',
  trigger: { on: 'time', seconds: 0.5 },
  effects: [{ do: 'fail', name: 'leak', fault: LEAK }],
};

/** A line of the log: Sensors judged the altimeter at this tick. */
const judged = (descentTick: number, judgment: Judgment): LogLine => ({
  seat: 'sensors',
  tick: descentTick,
  descentTick,
  what: { kind: 'judgeSource', source: 'altimeter', judgment },
});

const say = (table: Table, id: string, command: Command) => {
  const answer = commandTable(table, id, command);
  return answer.ok ? 'ok' : answer.error.code;
};
const measuresFor = (table: Table) => viewTable(table, 'm1').review?.measures[0];

/** m5 is Propellant. The leak comes at 30 ticks; the lander is down after 200. */
function answeredAt(shutTick: number, calledTick?: number): Table {
  const table = setDrill([LEAKS]);
  for (let tick = 0; tick < 190; tick += 1) {
    if (tick === calledTick) say(table, 'm5', { kind: 'callOut', sentence: 'leaking', to: 'lead' });
    if (tick === shutTick) say(table, 'm5', { kind: 'shutLine', shut: true });
    stepBy(table, 1);
  }
  return table;
}

/** What is said of the clock between the leak at 30 ticks and the line shut at 90. */
function saidOfClock(at: number, ...commands: readonly Command[]) {
  const table = setDrill([LEAKS]);
  stepBy(table, at);
  expect(commands.map((command) => say(table, 'm1', command))).toEqual(commands.map(() => 'ok'));
  stepBy(table, 90 - at);
  say(table, 'm5', { kind: 'shutLine', shut: true });
  return measuresFor(table)!.measures.recover.over;
}

describe('the measures of an inject', () => {
  it('[RV1] are the first sign that it was noticed, that its cause was named, and that all was answered, in seconds after it', () => {
    expect(measuresFor(answeredAt(150, 90))).toMatchObject({
      inject: 'leak',
      sentAfter: 0.5,
      measures: { detect: { seconds: 1 }, isolate: { seconds: 1 }, recover: { seconds: 2 } },
      responses: [{ id: 'shut', seconds: 2, isSeen: true }],
    });
  });

  it('[RV1] say nothing where nothing was observed, and do not count what came before the inject', () => {
    const early = measuresFor(answeredAt(10));
    expect(early?.measures.detect.seconds).toBeUndefined();
    expect(early?.measures.recover.seconds).toBeUndefined();
    expect(early?.responses).toEqual([{ id: 'shut', seat: 'propellant', within: 5, isSeen: true }]);
  });

  it('[RV1] count a judgment or a spot that stood when the inject came as the answer to it, and none that was taken back', () => {
    const sign = { by: 'judgment', source: 'altimeter', judgments: ['under check', 'rejected'] } as const;
    expect(lineOf([judged(20, 'rejected')], sign, 30)).toBe(0);
    expect(lineOf([judged(20, 'rejected'), judged(25, 'accepted')], sign, 30)).toBe(-1);
    expect(lineOf([judged(20, 'rejected'), judged(25, 'accepted'), judged(40, 'under check')], sign, 30)).toBe(2);
    const mark: LogLine = { ...judged(1, 'rejected'), what: { kind: 'markSpot', meters: -25, approach: 'either way' } };
    const clear: LogLine = { ...judged(2, 'rejected'), what: { kind: 'clearSpot' } };
    expect(lineOf([mark], { by: 'spot' }, 30)).toBe(0);
    expect(lineOf([mark, clear], { by: 'spot' }, 30)).toBe(-1);
    expect(ticksAfter(judged(20, 'rejected'), 30)).toBe(0);
    expect(ticksAfter(judged(40, 'rejected'), 30)).toBe(10);
  });

  it('[RV1] take no judgment of another source for the sign that one was noticed, and no trust in it either', () => {
    const frozen: EventRow = {
      ...LEAKS,
      effects: [{ do: 'fail', name: 'freeze', fault: { source: 'altimeter', kind: 'freeze', parameters: {} } }],
    };
    const table = setDrill([frozen]);
    stepBy(table, 60);
    const { state } = table;
    const noticedAfter = (...log: readonly LogLine[]) =>
      measuresOf({ ...table, state: { ...state, talk: { ...state.talk, log } } })[0]?.measures.detect.seconds;
    const other: LogLine = {
      ...judged(60, 'rejected'),
      what: { kind: 'judgeSource', source: 'velocityRadar', judgment: 'rejected' },
    };
    expect(noticedAfter(other)).toBeUndefined();
    expect(noticedAfter(other, judged(90, 'accepted'))).toBeUndefined();
    expect(noticedAfter(other, judged(90, 'accepted'), judged(120, 'under check'))).toBe(1.5);
  });

  it('[RV1] name the line of the log that each rests on', () => {
    const { line } = measuresFor(answeredAt(150))!.measures.recover;
    expect(answeredAt(150).state.talk.log[line!]?.what).toEqual({ kind: 'shutLine', shut: true });
  });

  const slower = { kind: 'setPace', pace: 0.25 } as const;
  const usual = { kind: 'setPace', pace: 1 } as const;

  it('[RV8] say where the clock was held between inject and answer, and not where it was held before', () => {
    expect(saidOfClock(60)).toEqual([]);
    expect(saidOfClock(60, { kind: 'hold' }, { kind: 'resume' })).toEqual(['hold']);
    expect(saidOfClock(60, { kind: 'stop' }, { kind: 'liftStop' }, { kind: 'resume' })).toEqual(['hold']);
    expect(saidOfClock(60, { kind: 'setConduct', conduct: 'stop and talk' }, { kind: 'resume' })).toEqual(['hold']);
    expect(saidOfClock(10, { kind: 'hold' }, { kind: 'resume' })).toEqual([]);
  });

  it('[RV8] say where the clock ran at another pace than the drill asks for, or in turns, also if it did so before', () => {
    expect(saidOfClock(60, slower)).toEqual(['pace']);
    expect(saidOfClock(10, slower)).toEqual(['pace']);
    expect(saidOfClock(10, slower, usual)).toEqual([]);
    expect(saidOfClock(60, slower, usual)).toEqual(['pace']);
    const turns = [{ kind: 'setConduct', conduct: 'turns' }, { kind: 'turnOver' }] as const;
    expect(saidOfClock(10, ...turns)).toEqual(['turns']);
  });

  it('[RV8] know the pace of a second descent, which no line of its log says', () => {
    const table = setDrill([LEAKS]);
    say(table, 'm1', slower);
    say(table, 'm1', { kind: 'end' });
    say(table, 'm1', { kind: 'again' });
    stepBy(table, 400);
    expect(table.state.descents).toBe(2);
    say(table, 'm5', { kind: 'shutLine', shut: true });
    expect(measuresFor(table)!.measures.recover.over).toEqual(['pace']);
  });

  it('[RV2] are put right by the evaluator, with a reason, and what the table saw stays beside it', () => {
    const table = answeredAt(150);
    say(table, 'm1', { kind: 'end' });
    const correct = {
      kind: 'correctMeasure',
      inject: 'leak',
      measure: 'detect',
      seconds: 1.5,
      reason: 'Said it aloud.',
    } as const;
    expect(say(table, 'm5', correct)).toBe('table/not-control');
    expect(say(table, 'm1', correct)).toBe('ok');
    expect(measuresFor(table)?.measures.detect).toMatchObject({
      seconds: 2,
      corrected: { seconds: 1.5, reason: 'Said it aloud.', by: 'Fay' },
    });
    expect(say(table, 'm1', { ...correct, inject: 'none' })).toBe('table/no-inject');
  });
});

describe('what is noted', () => {
  it('[RV3] stays with the control side until the descent is at rest, and observations after it too', () => {
    const table = setDrill([LEAKS]);
    stepBy(table, 60);
    say(table, 'm1', { kind: 'observe', sign: 'improve', topic: 'saying', text: 'Nobody said the age.' });
    say(table, 'm1', { kind: 'bookmark', text: 'long silence' });
    expect(viewTable(table, 'm1').review?.observations).toMatchObject([
      { text: 'Nobody said the age.', after: 1, by: 'Fay' },
    ]);
    expect(viewTable(table, 'm2').review).toBeUndefined();
    say(table, 'm1', { kind: 'end' });
    expect(viewTable(table, 'm2').review?.observations).toEqual([]);
    expect(viewTable(table, 'm2').review?.moments).toMatchObject([
      { kind: 'inject', after: 0.5, inject: 'leak' },
      { kind: 'bookmark', after: 1, text: 'long silence' },
    ]);
  });

  it('[RV4] is rated by objective; a suggestion has reasons, and is never a rating by itself', () => {
    const table = setDrill([LEAKS]);
    stepBy(table, 200);
    expect(table.state.stage).toBe('resolved');
    const { suggestions, ratings } = viewTable(table, 'm1').review!;
    expect(suggestions.map(({ objective, reasons }) => [objective, reasons.includes('missed')])).toEqual([
      ['one', true],
    ]);
    expect(ratings).toEqual([]);
    expect(viewTable(table, 'm2').review?.suggestions).toEqual([]);
    const rate = { kind: 'rate', objective: 'one', rating: 'S', evidence: 'Shut late.' } as const;
    expect(say(table, 'm1', { ...rate, objective: 'two' })).toBe('table/no-objective');
    expect(say(table, 'm1', rate)).toBe('ok');
    expect(viewTable(table, 'm2').review?.ratings).toEqual([]);
    say(table, 'm1', { kind: 'setDebriefStep', step: 'summary' });
    expect(viewTable(table, 'm2').review?.ratings).toMatchObject([{ objective: 'one', rating: 'S' }]);
  });
});

describe('how hard it was', () => {
  const load = {
    kind: 'sayLoad',
    thought: 4,
    hands: 1,
    haste: 5,
    success: 3,
    effort: 4,
    strain: 2,
    text: 'dark',
  } as const;

  it('[RV9] is said once or anew by whoever sat; the control side reads all of it, others their own', () => {
    const table = setDrill([]);
    expect(say(table, 'm4', load)).toBe('table/stage');
    say(table, 'm1', { kind: 'end' });
    expect(say(table, 'm4', load)).toBe('ok');
    expect(say(table, 'm4', { ...load, haste: 2 })).toBe('ok');
    expect(say(table, 'm5', load)).toBe('ok');
    const { kind: _kind, ...said } = load;
    const own = { ...said, haste: 2, name: 'sensors', seat: 'sensors' };
    const others = { ...said, name: 'propellant', seat: 'propellant' };
    expect(viewTable(table, 'm1').review?.loads).toEqual([own, others]);
    expect(viewTable(table, 'm4').review?.loads).toEqual([own]);
    for (const id of ['m2', 'm7']) expect(viewTable(table, id).review?.loads).toEqual([]);
  });

  it('[RV9] is refused off its scale, in words, and from whoever had no seat', () => {
    const table = setDrill([]);
    say(table, 'm1', { kind: 'end' });
    for (const strain of [0, 6, 2.5]) expect(say(table, 'm4', { ...load, strain })).toBe('table/out-of-range');
    expect(say(table, 'm1', load)).toBe('table/not-seated');
    expect(say(table, 'm7', load)).toBe('table/not-seated');
  });
});

describe('the debrief', () => {
  it('[RV5] is closed after its summary, or declined with a reason, and then stays closed', () => {
    const table = setDrill([]);
    say(table, 'm1', { kind: 'end' });
    expect(say(table, 'm1', { kind: 'closeDebrief' })).toBe('table/step');
    say(table, 'm1', { kind: 'setDebriefStep', step: 'summary' });
    expect(say(table, 'm1', { kind: 'closeDebrief' })).toBe('ok');
    expect(say(table, 'm1', { kind: 'setDebriefStep', step: 'reactions' })).toBe('table/step');
    const declined = setDrill([]);
    say(declined, 'm1', { kind: 'end' });
    expect(say(declined, 'm1', { kind: 'declineDebrief', reason: 'The room was needed.' })).toBe('ok');
    expect(viewTable(declined, 'm3').review).toMatchObject({ step: 'closed', declined: 'The room was needed.' });
  });

  it('[RV6] plays clips of at most 30 s on all screens at once', () => {
    const table = setDrill([]);
    say(table, 'm1', { kind: 'end' });
    expect(say(table, 'm1', { kind: 'showClip', from: 0, to: 31 })).toBe('table/clip');
    expect(say(table, 'm1', { kind: 'showClip', from: 10, to: 10 })).toBe('table/clip');
    expect(say(table, 'm1', { kind: 'showClip', from: 2, to: 30, seat: 'sensors' })).toBe('ok');
    stepBy(table, 60);
    for (const id of ['m1', 'm4', 'm7'])
      expect(viewTable(table, id).review?.clip).toEqual({ from: 2, to: 30, seat: 'sensors', playedFor: 1 });
  });

  it('[RV7] leaves a plan of actions that is edited in place, and one word and thing of each person', () => {
    const table = setDrill([]);
    say(table, 'm1', { kind: 'end' });
    const action = { text: 'Change rule 2.', owner: 'Ada', due: 'next week', state: 'open', isRule: true } as const;
    say(table, 'm1', { kind: 'setAction', ...action });
    say(table, 'm1', { kind: 'setAction', ...action, id: 1, state: 'done' });
    expect(say(table, 'm1', { kind: 'setAction', ...action, id: 7 })).toBe('table/no-action');
    expect(viewTable(table, 'm3').review?.actions).toEqual([{ id: 1, ...action, state: 'done' }]);
    say(table, 'm1', { kind: 'dropAction', id: 1 });
    for (const word of ['close', 'tense']) say(table, 'm3', { kind: 'washHot', word, thing: 'the age' });
    expect(viewTable(table, 'm2').review).toMatchObject({
      actions: [],
      hotWash: [{ name: 'flying', word: 'tense', thing: 'the age' }],
    });
    expect(say(table, 'm1', { kind: 'setGoal', text: 'one\u0000two' })).toBe('table/text');
  });
});
