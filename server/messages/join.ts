import { z } from 'zod';
import { accept, refuse, type Result } from '../../engine/result.ts';
import { parseMemberName, type Refusal } from '../../engine/table/index.ts';
import { malformed } from './command.ts';

/** What a client sends to open a table, to join one, or to come back to its place. */
export interface JoinOptions {
  readonly name: string;
  /** Proof of having sat here before; from the `Welcome` of that time. */
  readonly resume?: string;
}

const joinSchema = z.strictObject({ name: z.string().max(200), resume: z.string().min(1).max(64).exactOptional() });

export function parseJoinOptions(options: unknown): Result<JoinOptions, Refusal> {
  const parsed = joinSchema.safeParse(options);
  if (!parsed.success) return refuse(malformed(parsed.error));
  const name = parseMemberName(parsed.data.name);
  return name.ok ? accept(parsed.data) : name;
}
