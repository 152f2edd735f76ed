import {
  array,
  assert,
  constant,
  constantFrom,
  integer,
  nat,
  oneof,
  property,
  record,
  string,
  type Arbitrary,
} from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  askTable,
  formatRecord,
  headerOf,
  joinTable,
  markLine,
  openKeptTable,
  parseRecord,
  replayRecord,
  resumeKeptTable,
  stepKeptTable,
  tellLine,
  type KeptTable,
  type RecordLine,
} from '../../../engine/record/index.ts';
import {
  CONDUCTS,
  GIVEN_ROLES,
  PACES,
  ROLES,
  SEATS,
  judgeCommand,
  type Command,
  type Role,
  type TablePlan,
} from '../../../engine/table/index.ts';
import { ADDRESSEES, POLL_ANSWERS, SENTENCES } from '../../../engine/talk/index.ts';
import { drillOf, LEAK, ROW } from '../../support/plainDrill.ts';
import { plainModel, plainPlan } from '../../support/plainTable.ts';

const BY_HAND: TablePlan = plainPlan;
const BY_ORDERS: TablePlan = { ...plainPlan, choice: { ...plainPlan.choice, mode: 'by orders' } };
const DRILL: TablePlan = {
  ...plainPlan,
  choice: { ...plainPlan.choice, drill: 'try' },
  drill: drillOf([
    {
      ...ROW,
      id: 'leak',
      trigger: { on: 'time', seconds: 0.3 },
      effects: [
        { do: 'fail', name: 'leak', fault: LEAK },
        { do: 'tell', text: 'Look at the gauge.', to: ['propellant', 'room'], level: 'caution' },
      ],
    },
    { ...ROW, id: 'dry', trigger: { on: 'hand' }, effects: [{ do: 'mend', name: 'leak', seconds: 1 }] },
  ]),
};
const PLANS = constantFrom(BY_HAND, BY_ORDERS, DRILL);

type Action =
  | { readonly do: 'join'; readonly name: string; readonly role: Role }
  | { readonly do: 'line'; readonly who: number; readonly kind: 'dropped' | 'returned' | 'left' | 'interrupted' }
  | { readonly do: 'ask'; readonly who: number; readonly command: Command }
  | { readonly do: 'step'; readonly ticks: number };

const member = integer({ min: 1, max: 5 });
const command: Arbitrary<Command> = oneof(
  record({ kind: constant('takeSeat' as const), seat: constantFrom(...SEATS) }),
  record({ kind: constant('letIn' as const), member: member.map((n) => `m${n}`) }),
  record({ kind: constant('setThrust' as const), percent: integer({ min: -5, max: 105 }) }),
  record({ kind: constant('setTilt' as const), degrees: integer({ min: -35, max: 35 }) }),
  record({ kind: constant('orderDescentRate' as const), tenths: integer({ min: -25, max: 65 }) }),
  record({ kind: constant('orderDrift' as const), tenths: integer({ min: -55, max: 55 }) }),
  record({ kind: constant('orderLean' as const), degrees: integer({ min: -35, max: 35 }) }),
  record({ kind: constant('say' as const), text: string({ maxLength: 20 }), to: constantFrom(...ADDRESSEES) }),
  record({ kind: constant('callOut' as const), sentence: constantFrom(...SENTENCES), to: constantFrom(...ADDRESSEES) }),
  record({ kind: constantFrom('readBack' as const, 'confirm' as const), callout: integer({ min: 1, max: 4 }) }),
  record({ kind: constant('callPoll' as const), question: constantFrom('go' as const, 'stay' as const) }),
  record({
    kind: constant('answerPoll' as const),
    answer: constantFrom(...POLL_ANSWERS),
    reason: string({ maxLength: 9 }),
  }),
  record({ kind: constant('setPace' as const), pace: constantFrom(...PACES) }),
  record({ kind: constant('setConduct' as const), conduct: constantFrom(...CONDUCTS) }),
  record({
    kind: constant('setRole' as const),
    member: member.map((n) => `m${n}`),
    role: constantFrom(...GIVEN_ROLES),
  }),
  record({
    kind: constantFrom('remove' as const, 'handOverTable' as const),
    member: member.map((n) => `m${n}`),
  }),
  record({
    kind: constantFrom('sendInject' as const, 'skipInject' as const),
    inject: constantFrom('leak', 'dry', 'none'),
  }),
  record({ kind: constant('orderFacing' as const), steps: integer({ min: -4, max: 4 }) }),
  record({ kind: constant('setCeiling' as const), percent: integer({ min: 0, max: 100 }) }),
  record({ kind: constant('bookmark' as const), text: string({ maxLength: 9 }) }),
  record({ kind: constant('washHot' as const), word: constantFrom('close', 'odd'), thing: string({ maxLength: 9 }) }),
  record({
    kind: constant('sayLoad' as const),
    thought: integer({ min: 1, max: 5 }),
    hands: constant(1),
    haste: integer({ min: 1, max: 5 }),
    success: constant(4),
    effort: constant(2),
    strain: constant(5),
    text: string({ maxLength: 9 }),
  }),
  record({ kind: constant('setDebriefStep' as const), step: constantFrom('hot wash' as const, 'summary' as const) }),
  record({
    kind: constant('rate' as const),
    objective: constantFrom('one', 'two'),
    rating: constantFrom('P' as const, 'U' as const),
    evidence: constant(''),
  }),
  constantFrom(
    'leaveSeat' as const,
    'begin' as const,
    'hold' as const,
    'resume' as const,
    'again' as const,
    'stop' as const,
    'liftStop' as const,
    'end' as const,
    'turnOver' as const,
    'takeBack' as const,
    'closeDebrief' as const,
  ).map((kind): Command => ({ kind })),
);
const action: Arbitrary<Action> = oneof(
  {
    weight: 1,
    arbitrary: record({
      do: constant('join' as const),
      name: constantFrom('Ada', 'Bo', 'Cy'),
      role: constantFrom(...ROLES),
    }),
  },
  {
    weight: 1,
    arbitrary: record({
      do: constant('line' as const),
      who: member,
      kind: constantFrom('dropped' as const, 'returned' as const, 'left' as const, 'interrupted' as const),
    }),
  },
  { weight: 8, arbitrary: record({ do: constant('ask' as const), who: member, command }) },
  { weight: 4, arbitrary: record({ do: constant('step' as const), ticks: integer({ min: 1, max: 90 }) }) },
);
const session = array(action, { minLength: 5, maxLength: 120 });

/** Does one thing to the table, where it can be done at all. */
function act(kept: KeptTable, what: Action): void {
  const { state } = kept.table;
  switch (what.do) {
    case 'join':
      joinTable(kept, what.name, what.role);
      return;
    case 'line':
      if (state.members.some(({ id }) => id === `m${what.who}`)) tellLine(kept, `m${what.who}`, what.kind);
      return;
    case 'ask':
      askTable(kept, `m${what.who}`, what.command);
      return;
    case 'step':
      for (let i = 0; i < what.ticks; i += 1) stepKeptTable(kept);
      return;
  }
}

function open(plan: TablePlan): { readonly kept: KeptTable; readonly lines: RecordLine[] } {
  const lines: RecordLine[] = [];
  const kept = openKeptTable({ plan, model: plainModel, write: (line) => lines.push(line) });
  // somebody sits at the controls from the start, so that most sessions fly
  for (const what of [
    { do: 'join', name: 'Di', role: 'crew' },
    { do: 'ask', who: 1, command: { kind: 'takeSeat', seat: 'flying' } },
    { do: 'ask', who: 1, command: { kind: 'begin' } },
  ] as const)
    act(kept, what);
  return { kept, lines };
}

describe('any session', () => {
  it('[RE2] is its record: written, read and replayed it is the same table', () => {
    const seen = new Set<string>();
    assert(
      property(PLANS, session, (plan, actions) => {
        const { kept, lines } = open(plan);
        for (const what of actions) act(kept, what);
        const text = formatRecord({ header: headerOf(plan), lines: [...lines, markLine(kept.table)] });
        const parsed = parseRecord(text);
        if (!parsed.ok) throw new Error(JSON.stringify(parsed.error));
        const replayed = replayRecord(parsed.value, { plan, model: plainModel });
        if (!replayed.ok) throw new Error(replayed.error.code);
        expect(replayed.value.divergence).toBeUndefined();
        expect(replayed.value.table.state).toEqual(kept.table.state);
        seen.add(`${plan.choice.mode}, ${kept.table.state.stage}`);
      }),
      { seed: 8, numRuns: 300 },
    );
    const stages = ['descending', 'resolved'];
    expect(seen).toEqual(
      new Set(['by hand', 'by orders'].flatMap((mode) => stages.map((stage) => `${mode}, ${stage}`))),
    );
  });

  it('[RE6] cut off anywhere and taken up again goes on to the same end', () => {
    assert(
      property(PLANS, session, nat(), (plan, actions, cut) => {
        const undisturbed = open(plan);
        const killed = open(plan);
        const at = cut % actions.length;
        for (const what of actions) act(undisturbed.kept, what);
        for (const what of actions.slice(0, at)) act(killed.kept, what);
        // what the process had reached since its last line is lost with it, and made up for by the clock
        const cutOff = { header: headerOf(plan), lines: [...killed.lines] };
        const resumed = resumeKeptTable(cutOff, { plan, model: plainModel, write: (line) => killed.lines.push(line) });
        if (!resumed.ok) throw new Error('expected to be taken up');
        while (resumed.value.table.state.tick < killed.kept.table.state.tick) stepKeptTable(resumed.value);
        for (const what of actions.slice(at)) act(resumed.value, what);
        expect(resumed.value.table.state).toEqual(undisturbed.kept.table.state);
        expect(markLine(resumed.value.table)).toEqual(markLine(undisturbed.kept.table));
        expect(killed.lines).toEqual(undisturbed.lines);
      }),
      { seed: 9, numRuns: 300 },
    );
  });

  it('[TA25] is judged without being changed, and what is refused leaves no line', () => {
    let refused = 0;
    assert(
      property(PLANS, session, (plan, actions) => {
        const { kept, lines } = open(plan);
        for (const what of actions) {
          const before = structuredClone(kept.table.state);
          const count = lines.length;
          const judged = what.do === 'ask' ? judgeCommand(kept.table.state, `m${what.who}`, what.command) : undefined;
          expect(kept.table.state).toEqual(before);
          act(kept, what);
          if (judged === undefined) continue;
          if (!judged.ok) refused += 1;
          const isTraced = lines.length > count || JSON.stringify(kept.table.state) !== JSON.stringify(before);
          expect(judged.ok || !isTraced).toBe(true);
          expect(lines.length).toBe(count + (judged.ok ? 1 : 0));
        }
      }),
      { seed: 10, numRuns: 100 },
    );
    expect(refused).toBeGreaterThan(500);
  });
});
