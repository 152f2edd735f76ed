import path from 'node:path';
import { refuse, accept, type Result } from '../engine/result.ts';

/** What the server is told at start. Everything has a default; a value that cannot be meant is refused, not repaired. */
export interface ServerConfig {
  /** 0 lets the system choose. */
  readonly port: number;
  /** Address to listen on; undefined: all of this machine's. */
  readonly host: string | undefined;
  /** Folder of the built client. */
  readonly clientFolder: string;
  /** Most tables open at once. */
  readonly mostTables: number;
  /** How long the seat of a member whose line dropped is kept [s]. */
  readonly seatKeptSeconds: number;
  /** Folder of the records; undefined: none are kept. */
  readonly recordsFolder: string | undefined;
  /** How long a record is kept after its last change, unless somebody keeps it [days]. */
  readonly recordDays: number;
  /** Opens every run of the logbook; undefined: there is no such key. */
  readonly administratorKey: string | undefined;
}

/** Of the operating system's environment: NAME to text. */
export type Environment = Readonly<Record<string, string | undefined>>;

/** Long enough not to be guessed at two attempts a second; plain enough for a header. */
const ADMINISTRATOR_KEY = /^[!-~]{16,128}$/;

/** One line a problem, each naming the variable, what is expected and what it got. */
export function parseConfig(environment: Environment): Result<ServerConfig, readonly string[]> {
  const problems: string[] = [];
  const whole = (name: string, options: { readonly least: number; readonly most: number; readonly usual: number }) => {
    const text = environment[name]?.trim() ?? '';
    if (text === '') return options.usual;
    const value = Number(text);
    if (/^\d+$/.test(text) && value >= options.least && value <= options.most) return value;
    problems.push(`${name}: expected a whole number from ${options.least} to ${options.most}, got "${text}"`);
    return options.usual;
  };
  const administratorKey = environment['KILTER_ADMIN_KEY']?.trim() || undefined;
  if (administratorKey !== undefined && !ADMINISTRATOR_KEY.test(administratorKey))
    // what came is a secret, if a short one: it is not quoted
    problems.push('KILTER_ADMIN_KEY: expected 16 to 128 letters, digits or signs without spaces');
  const records = environment['KILTER_RECORDS']?.trim() || path.resolve(import.meta.dirname, '../.records');
  const config: ServerConfig = {
    port: whole('PORT', { least: 0, most: 65_535, usual: 2567 }),
    host: environment['HOST']?.trim() || undefined,
    clientFolder: path.resolve(import.meta.dirname, '../.build/client'),
    mostTables: whole('KILTER_MOST_TABLES', { least: 1, most: 1000, usual: 60 }),
    seatKeptSeconds: whole('KILTER_SEAT_KEPT_SECONDS', { least: 5, most: 86_400, usual: 300 }),
    recordsFolder: records === 'none' ? undefined : path.resolve(records),
    recordDays: whole('KILTER_RECORD_DAYS', { least: 1, most: 3650, usual: 30 }),
    administratorKey,
  };
  return problems.length === 0 ? accept(config) : refuse(problems);
}
