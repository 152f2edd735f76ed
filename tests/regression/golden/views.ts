import type { Drill } from '../../../engine/drill/index.ts';
import { createHash } from 'node:crypto';
import {
  createTable,
  playedModel,
  SEATS,
  stepTable,
  viewAt,
  viewTable,
  type Command,
} from '../../../engine/table/index.ts';
import type { Seat, Table, TablePlan } from '../../../engine/table/index.ts';
import { DRILLS, layDrill } from '../../../levels/index.ts';
import { commandTable, askJoin, joinTable } from '../../support/askTable.ts';
import { laid } from '../../support/planChoice.ts';

/** How often what is shown goes into the hash [tick]. */
const EVERY = 60;

/** Who asks for what, by tick of the descent; what is refused goes into the hash as well. */
type Script = Readonly<Record<number, readonly (readonly [Seat | 'control', Command])[]>>;

/** A descent of which every view is hashed, once a second. */
interface ShownRun {
  readonly name: string;
  readonly plan: TablePlan;
  /** Seats where people sit; stand-ins at the others. */
  readonly people: readonly Seat[];
  readonly script: Script;
  /** How many of the commands were carried out and refused. */
  readonly answers: readonly [done: number, refused: number];
}

/** By display; `control` is what the facilitator sees. */
export type ShownHashes = Readonly<Record<Seat | 'control', string>>;

/** What happened, so that equal hashes cannot be equal for nothing. */
interface Shown {
  readonly hashes: ShownHashes;
  readonly done: number;
  readonly refused: number;
  readonly table: Table;
}

/** A drill left to its stand-ins. */
function leftAlone(drill: Drill): ShownRun {
  const plan = layDrill(drill);
  if (!plan.ok) throw new Error(`the drill ${drill.id} can be laid out`);
  return { name: drill.id, plan: plan.value, people: [], script: {}, answers: [1, 0] };
}

/** By instruments, flown by orders, with trouble that the seed draws. */
const TROUBLED = laid({ lander: 'bolster', seed: 5, start: 'high', mode: 'by orders', sensorTrouble: 'seeded' });

export const SHOWN_RUNS: readonly ShownRun[] = [
  ...DRILLS.map(leftAlone),
  {
    name: 'people at every seat who say and do what they can',
    plan: TROUBLED,
    people: ['lead', 'flying', 'sensors', 'propellant', 'site'],
    script: {
      30: [
        ['flying', { kind: 'orderDescentRate', tenths: 60 }],
        ['flying', { kind: 'orderDrift', tenths: 5 }],
        ['site', { kind: 'markSpot', meters: 20, approach: 'to the right' }],
        ['lead', { kind: 'callPoll', question: 'go' }],
      ],
      60: [
        ['flying', { kind: 'answerPoll', answer: 'go', reason: '' }],
        ['sensors', { kind: 'answerPoll', answer: 'noGo', reason: 'Not yet.' }],
        ['lead', { kind: 'decide', decision: 'go' }],
        ['propellant', { kind: 'setCeiling', percent: 80 }],
      ],
      120: [
        ['sensors', { kind: 'callOut', sentence: 'heightAge', to: 'lead' }],
        ['flying', { kind: 'callOut', sentence: 'motion', to: 'all' }],
        ['lead', { kind: 'callOut', sentence: 'askUsable', to: 'propellant' }],
      ],
      180: [
        ['lead', { kind: 'readBack', callout: 1 }],
        ['sensors', { kind: 'confirm', callout: 1 }],
        ['propellant', { kind: 'callOut', sentence: 'usable', to: 'lead' }],
        ['site', { kind: 'stateLimit', hundredths: 120 }],
        ['site', { kind: 'declareGround', ground: 'steeper' }],
      ],
      240: [
        ['control', { kind: 'setPace', pace: 0.5 }],
        ['control', { kind: 'observe', sign: 'strength', topic: 'saying', text: 'Said and read back.' }],
        ['control', { kind: 'bookmark', text: 'Here.' }],
        ['sensors', { kind: 'judgeSource', source: 'velocityRadar', judgment: 'under check' }],
        ['lead', { kind: 'hold' }],
      ],
      300: [
        ['sensors', { kind: 'judgeSource', source: 'velocityRadar', judgment: 'rejected' }],
        ['sensors', { kind: 'nameCause', source: 'velocityRadar', cause: 'bias' }],
        ['propellant', { kind: 'armCutOff', armed: true }],
        ['propellant', { kind: 'setCutAtContact', on: false }],
        ['site', { kind: 'orderFacing', steps: 1 }],
      ],
      420: [
        ['flying', { kind: 'orderDescentRate', tenths: 30 }],
        ['flying', { kind: 'orderLean', degrees: 2 }],
        ['sensors', { kind: 'judgeSource', source: 'velocityRadar', judgment: 'accepted' }],
        ['propellant', { kind: 'armCutOff', armed: false }],
        ['propellant', { kind: 'setCutAtContact', on: true }],
        ['control', { kind: 'setConduct', conduct: 'stop and talk' }],
      ],
      600: [
        ['flying', { kind: 'orderLean', degrees: 0 }],
        ['flying', { kind: 'orderDrift', tenths: 0 }],
        ['sensors', { kind: 'realign' }],
        ['site', { kind: 'callOut', sentence: 'slope', to: 'flying' }],
      ],
      1200: [['flying', { kind: 'orderDescentRate', tenths: 15 }]],
      [-1]: [
        ['lead', { kind: 'callPoll', question: 'stay' }],
        [
          'flying',
          { kind: 'sayLoad', text: 'Busy.', thought: 3, hands: 1, haste: 4, success: 2, effort: 3, strain: 2 },
        ],
        ['control', { kind: 'setDebriefStep', step: 'analysis' }],
        ['control', { kind: 'setGoal', text: 'Sooner.' }],
      ],
    },
    answers: [42, 2],
  },
];

/** To rest, through the debrief's numbers. */
export function showAll({ plan, people, script }: ShownRun): Shown {
  const table = createTable({ plan, model: playedModel });
  askJoin(table, 'Fay', 'facilitator');
  const ids: Partial<Record<Seat | 'control', string>> = { control: 'm1' };
  for (const [at, seat] of people.entries()) {
    joinTable(table, { name: `Person ${at + 1}` });
    ids[seat] = `m${at + 2}`;
    commandTable(table, `m${at + 2}`, { kind: 'takeSeat', seat });
  }
  const hash = forEachDisplay(() => createHash('sha256'));
  let [done, refused] = [0, 0];
  const look = (): void => {
    for (const seat of SEATS) hash[seat].update(JSON.stringify(viewAt(table, seat)));
    hash.control.update(JSON.stringify(viewTable(table, 'm1')));
  };
  const ask = (who: Seat | 'control', command: Command): void => {
    const answer = commandTable(table, ids[who] ?? 'nobody', command);
    if (answer.ok) done += 1;
    else {
      refused += 1;
      hash[who].update(answer.error.code);
    }
  };
  ask('control', { kind: 'begin' });
  let steps = 0;
  for (; table.state.stage === 'descending' && steps < 60_000; steps++) {
    const { tick } = table.run.flight;
    if (!table.state.held) for (const [who, command] of script[tick] ?? []) ask(who, command);
    else ask('control', { kind: 'resume' });
    stepTable(table);
    if (steps % EVERY === 0) look();
  }
  look();
  for (const [who, command] of script[-1] ?? []) ask(who, command);
  look();
  const hashes = forEachDisplay((who) => hash[who].digest('hex').slice(0, 16));
  return { hashes, done, refused, table };
}

function forEachDisplay<Value>(make: (who: Seat | 'control') => Value): Readonly<Record<Seat | 'control', Value>> {
  const [lead, flying, sensors, propellant, site] = [
    make('lead'),
    make('flying'),
    make('sensors'),
    make('propellant'),
    make('site'),
  ];
  return { lead, flying, sensors, propellant, site, control: make('control') };
}

/** Hashes of all that is shown, by run and display. */
export function goldenViews(): Readonly<Record<string, ShownHashes>> {
  return Object.fromEntries(SHOWN_RUNS.map((run) => [run.name, showAll(run).hashes]));
}
