import { describe, expect, it } from 'vitest';
import {
  PERMISSIONS,
  SEATS,
  createTable,
  judgeCommand,
  stepTable,
  viewTable,
  type Command,
  type Seat,
  type Table,
} from '../../../engine/table/index.ts';
import { commandTable, dropMember, joinTable } from '../../support/askTable.ts';
import { plainModel, plainPlan } from '../../support/plainTable.ts';

/** Five people, one a seat; a sixth who was here from the start without a seat, and a seventh who came later. */
function setTable(stage: 'gathering' | 'descending' | 'resolved'): Table {
  const table = createTable({ plan: plainPlan, model: plainModel });
  for (const name of ['Ada', 'Bo', 'Cy', 'Di', 'Ed', 'Fay']) joinTable(table, { name });
  SEATS.forEach((seat, i) => commandTable(table, `m${i + 1}`, { kind: 'takeSeat', seat }));
  if (stage !== 'gathering') commandTable(table, 'm1', { kind: 'begin' });
  joinTable(table, { name: 'Gus' });
  // freed, so that somebody may ask for it
  commandTable(table, 'm5', { kind: 'leaveSeat' });
  if (stage === 'resolved') {
    commandTable(table, 'm2', { kind: 'setThrust', percent: 0 });
    while (table.state.stage !== 'resolved') stepTable(table);
  }
  return table;
}

const COMMANDS: Readonly<Record<Command['kind'], Command>> = {
  takeSeat: { kind: 'takeSeat', seat: 'site' },
  leaveSeat: { kind: 'leaveSeat' },
  letIn: { kind: 'letIn', member: 'm7' },
  handOver: { kind: 'handOver', member: 'm7' },
  deal: { kind: 'deal', member: 'm7', seat: 'site' },
  judgeSource: { kind: 'judgeSource', source: 'altimeter', judgment: 'rejected' },
  nameCause: { kind: 'nameCause', source: 'altimeter', cause: 'freeze' },
  realign: { kind: 'realign' },
  setCeiling: { kind: 'setCeiling', percent: 60 },
  armCutOff: { kind: 'armCutOff', armed: true },
  fireCutOff: { kind: 'fireCutOff' },
  setCutAtContact: { kind: 'setCutAtContact', on: false },
  shutLine: { kind: 'shutLine', shut: true },
  markSpot: { kind: 'markSpot', meters: 3, approach: 'either way' },
  clearSpot: { kind: 'clearSpot' },
  declareGround: { kind: 'declareGround', ground: 'steeper' },
  stateLimit: { kind: 'stateLimit', hundredths: 120 },
  orderFacing: { kind: 'orderFacing', steps: 1 },
  begin: { kind: 'begin' },
  setThrust: { kind: 'setThrust', percent: 40 },
  setTilt: { kind: 'setTilt', degrees: 2 },
  orderDescentRate: { kind: 'orderDescentRate', tenths: 20 },
  orderDrift: { kind: 'orderDrift', tenths: 0 },
  orderLean: { kind: 'orderLean', degrees: -3 },
  setPace: { kind: 'setPace', pace: 0.5 },
  hold: { kind: 'hold' },
  resume: { kind: 'resume' },
  abort: { kind: 'abort' },
  again: { kind: 'again' },
  wait: { kind: 'wait' },
  callOut: { kind: 'callOut', sentence: 'goForLanding', to: 'all' },
  say: { kind: 'say', text: 'hello', to: 'all' },
  // nothing has been said, asked or raised: no seat may
  readBack: { kind: 'readBack', callout: 1 },
  confirm: { kind: 'confirm', callout: 1 },
  callPoll: { kind: 'callPoll', question: 'go' },
  answerPoll: { kind: 'answerPoll', answer: 'go', reason: '' },
  decide: { kind: 'decide', decision: 'go' },
  acknowledge: { kind: 'acknowledge', alert: 1 },
  setRole: { kind: 'setRole', member: 'm7', role: 'observer' },
  handOverTable: { kind: 'handOverTable', member: 'm7' },
  remove: { kind: 'remove', member: 'm7' },
  setLock: { kind: 'setLock', locked: true },
  setReady: { kind: 'setReady', ready: true },
  stop: { kind: 'stop' },
  liftStop: { kind: 'liftStop' },
  end: { kind: 'end' },
  sendInject: { kind: 'sendInject', inject: 'a' },
  skipInject: { kind: 'skipInject', inject: 'a' },
  delayInject: { kind: 'delayInject', inject: 'a', seconds: 5 },
  setConduct: { kind: 'setConduct', conduct: 'turns' },
  turnOver: { kind: 'turnOver' },
  takeBack: { kind: 'takeBack' },
  observe: { kind: 'observe', sign: 'strength', topic: 'saying', text: 'Said it well.' },
  bookmark: { kind: 'bookmark', text: '' },
  // there is no drill here: no objective, no inject
  rate: { kind: 'rate', objective: 'one', rating: 'S', evidence: '' },
  correctMeasure: { kind: 'correctMeasure', inject: 'a', measure: 'detect', reason: 'heard it' },
  washHot: { kind: 'washHot', word: 'close', thing: '' },
  sayLoad: { kind: 'sayLoad', thought: 3, hands: 1, haste: 2, success: 4, effort: 3, strain: 5, text: '' },
  setDebriefStep: { kind: 'setDebriefStep', step: 'hot wash' },
  setTopic: { kind: 'setTopic', topic: 'leading' },
  showClip: { kind: 'showClip', from: 0, to: 10 },
  hideClip: { kind: 'hideClip' },
  noteTopic: { kind: 'noteTopic', topic: 'saying', text: 'Say the age.' },
  setGoal: { kind: 'setGoal', text: 'Read back.' },
  setAction: {
    kind: 'setAction',
    text: 'Change the card.',
    owner: 'Ada',
    due: 'next week',
    state: 'open',
    isRule: true,
  },
  dropAction: { kind: 'dropAction', id: 1 },
  askWhatIf: { kind: 'askWhatIf', change: 'world', world: 'mars' },
  closeDebrief: { kind: 'closeDebrief' },
  declineDebrief: { kind: 'declineDebrief', reason: 'no time' },
};

/** What nobody may is left out. Who of m1 (Lead), m2 (Flying), m3 (Sensors), m4 (Propellant), m6 (no seat) and m7 (no seat, came during the descent) may. */
const MAY: Readonly<
  Record<'gathering' | 'descending' | 'resolved', Readonly<Partial<Record<Command['kind'], string>>>>
> = {
  gathering: {
    takeSeat: 'm1 m2 m3 m4 m6 m7',
    leaveSeat: 'm1 m2 m3 m4',
    handOver: 'm1 m2 m3 m4',
    deal: 'm1',
    begin: 'm1 m2 m3 m4',
    setPace: 'm1',
    remove: 'm1',
    setLock: 'm1',
    say: 'm1 m2 m3 m4',
    callPoll: 'm1',
    // there is no facilitator here, no stop to lift, and nothing is played in turns
    setReady: 'm1 m2 m3 m4 m6 m7',
    stop: 'm1 m2 m3 m4 m6 m7',
    setConduct: 'm1',
  },
  descending: {
    takeSeat: 'm1 m2 m3 m4 m6',
    leaveSeat: 'm1 m2 m3 m4',
    letIn: 'm1 m2 m3 m4',
    handOver: 'm1 m2 m3 m4',
    deal: 'm1',
    // m3 alone, and at a table with instruments; firing only what is armed; nobody sits at Site
    setCeiling: 'm4',
    armCutOff: 'm4',
    setCutAtContact: 'm4',
    shutLine: 'm4',
    setThrust: 'm2',
    setTilt: 'm2',
    // m2, in a descent by orders
    setPace: 'm1',
    remove: 'm1',
    setLock: 'm1',
    hold: 'm1 m2 m3 m4',
    abort: 'm1',
    again: 'm1',
    callOut: 'm1',
    say: 'm1 m2 m3 m4',
    callPoll: 'm1',
    // there is no facilitator here, no stop to lift, and nothing is played in turns
    stop: 'm1 m2 m3 m4 m6 m7',
    bookmark: 'm1',
    end: 'm1',
    setConduct: 'm1',
  },
  resolved: {
    takeSeat: 'm1 m2 m3 m4 m6 m7',
    leaveSeat: 'm1 m2 m3 m4',
    handOver: 'm1 m2 m3 m4',
    deal: 'm1',
    setPace: 'm1',
    remove: 'm1',
    setLock: 'm1',
    again: 'm1',
    // at rest it is asked whether to stay
    callOut: 'm1',
    say: 'm1 m2 m3 m4',
    // there is no facilitator here, no stop to lift, and nothing is played in turns
    stop: 'm1 m2 m3 m4 m6 m7',
    // where nobody facilitates, who decides leads the debrief; it is not at its summary, and nothing is on show
    bookmark: 'm1',
    washHot: 'm1 m2 m3 m4 m6 m7',
    sayLoad: 'm1 m2 m3 m4',
    setDebriefStep: 'm1',
    setTopic: 'm1',
    showClip: 'm1',
    noteTopic: 'm1',
    setGoal: 'm1',
    setAction: 'm1',
    askWhatIf: 'm1',
    declineDebrief: 'm1',
  },
};

describe('who may do what', () => {
  it.each(['gathering', 'descending', 'resolved'] as const)(
    '[TA25] is as the table of permissions says: %s',
    (stage) => {
      const { state } = setTable(stage);
      const kinds = Object.keys(PERMISSIONS) as Command['kind'][];
      const may = Object.fromEntries(
        kinds.map((kind) => {
          const allowed = ['m1', 'm2', 'm3', 'm4', 'm6', 'm7'].filter(
            (id) => judgeCommand(state, id, COMMANDS[kind]).ok,
          );
          return [kind, allowed.join(' ')];
        }),
      );
      const wanted = Object.fromEntries(kinds.map((kind) => [kind, MAY[stage][kind] ?? '']));
      expect(may).toEqual(wanted);
    },
  );
});

const take = (table: Table, id: string, seat: Seat) => commandTable(table, id, { kind: 'takeSeat', seat });

describe('whoever comes while a descent runs', () => {
  it('[TA26] watches until somebody at the table lets them take a seat', () => {
    const table = setTable('descending');
    expect(take(table, 'm7', 'site')).toMatchObject({ ok: false, error: { code: 'table/not-let-in' } });
    expect(commandTable(table, 'm6', { kind: 'letIn', member: 'm7' })).toMatchObject({ ok: false });
    expect(viewTable(table, 'm3').waiting).toEqual([{ id: 'm7', name: 'Gus' }]);
    expect(viewTable(table, 'm7').you.mayTakeSeat).toBe(false);
    expect(commandTable(table, 'm3', { kind: 'letIn', member: 'm7' }).ok).toBe(true);
    expect(viewTable(table, 'm3').waiting).toEqual([]);
    expect(viewTable(table, 'm7').you.mayTakeSeat).toBe(true);
    expect(take(table, 'm7', 'site').ok).toBe(true);
  });

  it('[TA26] is let in by the next descent, and may take a seat when nobody is there to let them', () => {
    const again = setTable('descending');
    commandTable(again, 'm1', { kind: 'again' });
    for (let i = 0; i < 300; i += 1) stepTable(again);
    expect(take(again, 'm7', 'site').ok).toBe(true);
    const deserted = setTable('descending');
    for (const id of ['m1', 'm2', 'm3', 'm4']) dropMember(deserted, id);
    expect(take(deserted, 'm7', 'site').ok).toBe(true);
  });
});
