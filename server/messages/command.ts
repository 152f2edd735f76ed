import { z } from 'zod';
import { JUDGMENTS } from '../../engine/estimate/index.ts';
import { SOURCES } from '../../engine/sensors/index.ts';
import { accept, refuse, type Result } from '../../engine/result.ts';
import { SEATS, type Command, type Refusal } from '../../engine/table/index.ts';

/** What a client may ask of the table, as it arrives. Ranges are the authority's business; here it is only shape. */
const commandSchema: z.ZodType<Command> = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('takeSeat'), seat: z.enum(SEATS) }),
  z.strictObject({ kind: z.literal('leaveSeat') }),
  z.strictObject({ kind: z.literal('letIn'), member: z.string().max(9) }),
  z.strictObject({ kind: z.literal('judgeSource'), source: z.enum(SOURCES), judgment: z.enum(JUDGMENTS) }),
  z.strictObject({ kind: z.literal('begin') }),
  z.strictObject({ kind: z.literal('setThrust'), percent: z.number() }),
  z.strictObject({ kind: z.literal('setTilt'), degrees: z.number() }),
  z.strictObject({ kind: z.literal('hold') }),
  z.strictObject({ kind: z.literal('resume') }),
  z.strictObject({ kind: z.literal('abort') }),
  z.strictObject({ kind: z.literal('again') }),
]);

/** Of the message 'command', sent as a request. The answer is a `CommandAnswer`. */
export function parseCommand(message: unknown): Result<Command, Refusal> {
  const parsed = commandSchema.safeParse(message);
  return parsed.success ? accept(parsed.data) : refuse(malformed(parsed.error));
}

export type CommandAnswer = { readonly ok: true } | { readonly ok: false; readonly error: Refusal };

/** One line: where in the message, and what is wrong there. */
export function malformed(error: z.ZodError): Refusal {
  const issue = error.issues[0];
  const where = issue === undefined || issue.path.length === 0 ? 'message' : issue.path.join('.');
  const what = issue?.message ?? 'not understood';
  return { code: 'table/malformed', reason: `The table did not understand that. ${where}: ${what}` };
}
