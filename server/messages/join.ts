import { z } from 'zod';
import { accept, refuse, type Result } from '../../engine/result.ts';
import { parseMemberName, type PlanChoice, type Refusal, type Role } from '../../engine/table/index.ts';
import { parseChoice } from './choice.ts';
import { malformed } from './malformed.ts';

/** An evaluator is made by the facilitator. */
const JOINING_ROLES = ['crew', 'observer', 'room screen', 'facilitator'] as const satisfies readonly Role[];
type JoiningRole = (typeof JOINING_ROLES)[number];

/** What a client sends to open a table, to join one, or to come back to its place. */
export interface JoinOptions {
  readonly name: string;
  /** What this person comes as; crew unless they say otherwise. Who opens a table may come as its facilitator. */
  readonly role?: JoiningRole;
  /** Proof of having sat here before; from the `Welcome` of that time. */
  readonly resume?: string;
  /** What a new table is to play; without it, and for whoever joins, what the server has. */
  readonly choice?: PlanChoice;
}

/** The body of a request to open a table, or, with a code, to enter one. */
export interface EnteringBody extends JoinOptions {
  /** Six letters; in the body, since addresses are written down by proxies. */
  readonly code?: string;
}

/** The same, read. */
export interface EnteringOptions {
  readonly code: string | undefined;
  readonly join: JoinOptions;
}

const enteringSchema = z.strictObject({
  code: z.string().max(16).exactOptional(),
  name: z.string().max(200),
  role: z.enum(JOINING_ROLES).exactOptional(),
  resume: z.string().min(1).max(64).exactOptional(),
  choice: z.unknown().optional(),
});

export function parseEntering(options: unknown): Result<EnteringOptions, Refusal> {
  const parsed = enteringSchema.safeParse(options);
  if (!parsed.success) return refuse(malformed(firstIssue(parsed.error)));
  const { code, choice: json, ...rest } = parsed.data;
  const name = parseMemberName(rest.name);
  if (!name.ok) return name;
  if (json === undefined) return accept({ code, join: rest });
  const choice = parseChoice(json);
  return choice.ok ? accept({ code, join: { ...rest, choice: choice.value } }) : choice;
}

/** One line: where in the message, and what is wrong there. */
function firstIssue({ issues: [issue] }: z.ZodError): string {
  const where = issue === undefined || issue.path.length === 0 ? 'message' : issue.path.join('.');
  return `${where}: ${issue?.message ?? 'not understood'}`;
}
