import { describe, expect, it } from 'vitest';
import { hashValue } from '../../../engine/math/hashValue.ts';
import { nextUniform, seedRandom } from '../../../engine/math/index.ts';
import { askTable, COMMAND_KINDS, joinTable, openKeptTable, stepKeptTable } from '../../../engine/record/index.ts';
import { SEATS, type Command, type TablePlan } from '../../../engine/table/index.ts';
import { parseCommand } from '../../../server/messages/index.ts';
import { drillOf, LEAK, ROW } from '../../support/plainDrill.ts';
import { plainModel, plainPlan } from '../../support/plainTable.ts';

const PLAN: TablePlan = {
  ...plainPlan,
  choice: { ...plainPlan.choice, drill: 'try' },
  drill: drillOf([
    { ...ROW, id: 'leak', trigger: { on: 'hand' }, effects: [{ do: 'fail', name: 'leak', fault: LEAK }] },
  ]),
};

/** m1 facilitates, m2 to m6 sit, m7 observes, m8 is the room screen; m9 was removed, m10 never came. */
function openTable() {
  let lines = 0;
  const kept = openKeptTable({ plan: PLAN, model: plainModel, write: () => (lines += 1) });
  joinTable(kept, 'Fay', 'facilitator');
  SEATS.forEach((seat, at) => {
    joinTable(kept, seat);
    askTable(kept, `m${at + 2}`, { kind: 'takeSeat', seat });
  });
  joinTable(kept, 'Ola', 'observer');
  joinTable(kept, 'Wall', 'room screen');
  joinTable(kept, 'Mal');
  askTable(kept, 'm1', { kind: 'remove', member: 'm9' });
  askTable(kept, 'm1', { kind: 'begin' });
  for (let tick = 0; tick < 30; tick += 1) stepKeptTable(kept);
  return { kept, lineCount: () => lines };
}

/** What anybody may do at any time. */
const FOR_ANYBODY: readonly Command['kind'][] = ['stop'];

const WORDS = [
  'lead',
  'all',
  'altimeter',
  'rejected',
  'noData',
  'go',
  'turns',
  'leak',
  'm1',
  'crew',
  'one',
  'P',
  '',
  '\u0000',
];
const FIELDS = [
  'seat',
  'member',
  'source',
  'judgment',
  'cause',
  'percent',
  'degrees',
  'tenths',
  'inject',
  'seconds',
  'role',
  'sentence',
  'to',
  'text',
  'question',
  'answer',
  'reason',
  'conduct',
  'objective',
  'rating',
  'evidence',
  'change',
  '__proto__',
];

/** A message as a spoiler makes it: of a kind that there is, mostly, with fields that fit by chance, or nothing like a message. */
function drawMessage(random: ReturnType<typeof seedRandom>): unknown {
  const draw = (count: number) => Math.floor(count * nextUniform(random));
  const value = (): unknown => {
    const values = [
      draw(100) - 20,
      WORDS[draw(WORDS.length)],
      draw(2) === 0,
      null,
      NaN,
      [draw(3)],
      { kind: 'begin' },
      1e300,
    ];
    return values[draw(values.length)];
  };
  if (draw(20) === 0) return value();
  const message: Record<string, unknown> = Object.create(null) as Record<string, unknown>;
  message['kind'] = draw(20) === 0 ? value() : COMMAND_KINDS[draw(COMMAND_KINDS.length)];
  for (let count = draw(4); count > 0; count -= 1) message[FIELDS[draw(FIELDS.length)] ?? ''] = value();
  return message;
}

describe('a million messages at random, malformed and out of turn', () => {
  it('[TA25] from people without the right change nothing, leave no line in the record, and are each answered with a reason', () => {
    const { kept, lineCount } = openTable();
    const before = { state: hashValue(kept.table.state), lines: lineCount() };
    const random = seedRandom(5);
    let read = 0;
    for (let i = 0; i < 1_000_000; i += 1) {
      const command = parseCommand(drawMessage(random));
      if (!command.ok) {
        if (command.error.reason.length > 10) continue;
        throw new Error('refused without a reason');
      }
      if (FOR_ANYBODY.includes(command.value.kind)) continue;
      read += 1;
      const asked = askTable(kept, ['m7', 'm8', 'm9', 'm10'][i % 4] ?? '', command.value);
      if (asked.ok) throw new Error(`took ${JSON.stringify(command.value)}`);
    }
    expect(read).toBeGreaterThan(50_000);
    expect({ state: hashValue(kept.table.state), lines: lineCount() }).toEqual(before);
  });
});
