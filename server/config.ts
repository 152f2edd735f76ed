import { BlockList, isIP } from 'node:net';
import path from 'node:path';
import { accept, refuse, type Result } from '../engine/result.ts';
import { settingNamed, type SettingName } from './settings.ts';

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
  /** Most tables that were opened from one address and are still open. */
  readonly tablesPerAddress: number;
  /** Most lines from one address at once. */
  readonly linesPerAddress: number;
  /** How long the seat of a member whose line dropped is kept [s]. */
  readonly seatKeptSeconds: number;
  /** How long a table stays open at which nobody does anything [min]. */
  readonly idleMinutes: number;
  /** Folder of the records; undefined: none are kept. */
  readonly recordsFolder: string | undefined;
  /** How long a record is kept after its last change, unless somebody keeps it [days]. */
  readonly recordDays: number;
  /** Opens every run of the logbook; undefined: there is no such key. */
  readonly administratorKey: string | undefined;
  /** Whose word on where a request came from is believed. */
  readonly trustedProxies: BlockList;
  /** Names under which the server is reached, without ports; none: any. */
  readonly hosts: readonly string[];
  /** Path below which it lies, without a slash at the end; '': at the root of its name. */
  readonly basePath: string;
  /** Address of the Redis through which several processes know each other; undefined: there is one process. */
  readonly redis: string | undefined;
  /** Name, port and path under which browsers reach this process; of use with `redis` alone. */
  readonly publicAddress: string;
  /** undefined: as it is read, by people or by a program. */
  readonly log: 'plain' | 'json' | undefined;
}

/** Of the operating system's environment: NAME to text. */
export type Environment = Readonly<Record<string, string | undefined>>;

/** Long enough not to be guessed at two attempts a second; plain enough for a header. */
const ADMINISTRATOR_KEY = /^[!-~]{16,128}$/;

const HOST_NAME = /^([a-z0-9.-]+|\[[0-9a-f:]+\])$/i;

/** A name, a port where it is not the usual one, and a path where there is one. */
const PUBLIC_ADDRESS = /^([a-z0-9.-]+|\[[0-9a-f:]+\])(:\d{1,5})?(\/[\w-]+)*$/i;

/** One line a problem, each naming the variable, what is expected and what it got. */
export function parseConfig(environment: Environment): Result<ServerConfig, readonly string[]> {
  const problems: string[] = [];
  const textOf = (name: SettingName) => environment[name]?.trim() ?? '';
  const whole = (name: SettingName) => readWhole(name, textOf(name), problems);
  const administratorKey = textOf('KILTER_ADMIN_KEY') || undefined;
  if (administratorKey !== undefined && !ADMINISTRATOR_KEY.test(administratorKey))
    // what came is a secret, if a short one: it is not quoted
    problems.push('KILTER_ADMIN_KEY: expected 16 to 128 letters, digits or signs without spaces');
  const records = textOf('KILTER_RECORDS') || path.resolve(import.meta.dirname, '../.records');
  const config: ServerConfig = {
    port: whole('PORT'),
    host: textOf('HOST') || undefined,
    clientFolder: path.resolve(import.meta.dirname, '../.build/client'),
    mostTables: whole('KILTER_MOST_TABLES'),
    tablesPerAddress: whole('KILTER_TABLES_PER_ADDRESS'),
    linesPerAddress: whole('KILTER_LINES_PER_ADDRESS'),
    seatKeptSeconds: whole('KILTER_SEAT_KEPT_SECONDS'),
    idleMinutes: whole('KILTER_IDLE_MINUTES'),
    recordsFolder: records === 'none' ? undefined : path.resolve(records),
    recordDays: whole('KILTER_RECORD_DAYS'),
    administratorKey,
    trustedProxies: readProxies(listOf(textOf('KILTER_TRUSTED_PROXIES')), problems),
    hosts: readHosts(listOf(textOf('KILTER_HOSTS')), problems),
    basePath: readBasePath(textOf('KILTER_BASE_PATH'), problems),
    ...readOthers(textOf('KILTER_REDIS'), textOf('KILTER_PUBLIC_ADDRESS'), problems),
    log: readLog(textOf('KILTER_LOG'), problems),
  };
  return problems.length === 0 ? accept(config) : refuse(problems);
}

function readWhole(name: SettingName, text: string, problems: string[]): number {
  const { usual, range: [least, most] = [0, 0] } = settingNamed(name);
  if (text === '') return Number(usual);
  const value = Number(text);
  if (/^\d+$/.test(text) && value >= least && value <= most) return value;
  problems.push(`${name}: expected a whole number from ${least} to ${most}, got "${text}"`);
  return Number(usual);
}

function listOf(text: string): readonly string[] {
  return text
    .split(',')
    .map((part) => part.trim())
    .filter((part) => part !== '');
}

function readProxies(parts: readonly string[], problems: string[]): BlockList {
  const list = new BlockList();
  for (const part of parts) {
    const [address = '', bits, ...more] = part.split('/');
    const version = isIP(address);
    const most = version === 4 ? 32 : 128;
    const prefix = bits === undefined ? most : Number(bits);
    if (version === 0 || more.length > 0 || !/^\d*$/.test(bits ?? '') || bits === '' || prefix > most)
      problems.push(`KILTER_TRUSTED_PROXIES: expected addresses or networks such as 203.0.113.0/24, got "${part}"`);
    else list.addSubnet(address, prefix, version === 4 ? 'ipv4' : 'ipv6');
  }
  return list;
}

function readHosts(parts: readonly string[], problems: string[]): readonly string[] {
  for (const part of parts)
    if (!HOST_NAME.test(part))
      problems.push(`KILTER_HOSTS: expected names without a port, such as kilter.example, got "${part}"`);
  return parts.map((part) => part.toLowerCase());
}

function readBasePath(text: string, problems: string[]): string {
  if (text !== '' && !/^(\/[\w-]+)+\/?$/.test(text))
    problems.push(`KILTER_BASE_PATH: expected a path such as /kilter, got "${text}"`);
  return text.replace(/\/$/, '');
}

function readOthers(
  redis: string,
  publicAddress: string,
  problems: string[],
): Pick<ServerConfig, 'redis' | 'publicAddress'> {
  // it may hold a password: it is not quoted
  if (redis !== '' && !/^rediss?:$/.test(protocolOf(redis)))
    problems.push('KILTER_REDIS: expected an address such as redis://127.0.0.1:6379');
  if (redis !== '' ? !PUBLIC_ADDRESS.test(publicAddress) : publicAddress !== '')
    problems.push(
      `KILTER_PUBLIC_ADDRESS: expected, together with KILTER_REDIS, a name such as kilter.example/p1, got "${publicAddress}"`,
    );
  return { redis: redis === '' ? undefined : redis, publicAddress };
}

function protocolOf(address: string): string {
  return URL.canParse(address) ? new URL(address).protocol : '';
}

function readLog(text: string, problems: string[]): 'plain' | 'json' | undefined {
  if (text === '' || text === 'plain' || text === 'json') return text === '' ? undefined : text;
  problems.push(`KILTER_LOG: expected plain or json, got "${text}"`);
  return undefined;
}
