import { describe, expect, it } from 'vitest';
import { createProblemList } from '../../../engine/fieldReader.ts';
import { readCommand } from '../../../engine/record/readCommand.ts';

function problemsOf(command: unknown): readonly string[] {
  const list = createProblemList('command');
  readCommand(list, command, 'command');
  return list.problems.map(({ path }) => path);
}

describe('a command as it is read', () => {
  it.each([
    { kind: 'setThrust', percent: 50 },
    { kind: 'setTilt', degrees: -3 },
    { kind: 'orderDescentRate', tenths: 15 },
    { kind: 'stateLimit', hundredths: 120 },
  ])('says in whole steps what it sets: $kind', (command) => {
    expect(problemsOf(command)).toEqual([]);
    const [, [field, value]] = Object.entries(command) as unknown as [unknown, [string, number]];
    expect(problemsOf({ ...command, [field]: value + 0.5 })).toEqual([`command.${field}`]);
  });
});
