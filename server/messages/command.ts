import { createProblemList } from '../../engine/fieldReader.ts';
import { readCommand } from '../../engine/record/index.ts';
import { accept, formatProblem, refuse, type Result } from '../../engine/result.ts';
import type { Command, Refusal } from '../../engine/table/index.ts';
import { malformed } from './malformed.ts';

/** Of the message 'command', sent as a request: read as it is read from a record. The answer is a `CommandAnswer`. */
export function parseCommand(message: unknown): Result<Command, Refusal> {
  const list = createProblemList('command');
  const command = readCommand(list, message, 'command');
  const [problem] = list.problems;
  if (command !== undefined && problem === undefined) return accept(command);
  return refuse(malformed(problem === undefined ? 'command: expected an object, got nothing' : formatProblem(problem)));
}

export type CommandAnswer = { readonly ok: true } | { readonly ok: false; readonly error: Refusal };
