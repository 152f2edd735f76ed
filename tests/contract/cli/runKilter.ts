import { spawnSync } from 'node:child_process';
import path from 'node:path';
import { expect } from 'vitest';
import { runCommandLine } from '../../../server/cli/program.ts';
import { formatReport } from '../../../server/cli/report.ts';
import { ROOT } from '../../support/sources.ts';

export interface Ran {
  readonly status: number | null;
  readonly out: string;
  readonly err: string;
}

/** Runs the real command in a process of its own, from the root of the project. */
export function runKilter(args: readonly string[]): Ran {
  const done = spawnSync(process.execPath, [path.join(ROOT, 'server/cli/kilter.ts'), ...args], {
    cwd: ROOT,
    encoding: 'utf8',
    timeout: 60_000,
  });
  return { status: done.status, out: done.stdout, err: done.stderr };
}

/** Runs the same command line in this process: what the command does after start-up, ten times as fast. */
export async function callKilter(args: readonly string[]): Promise<Ran> {
  const written = { out: '', err: '' };
  const status = await runCommandLine(args, {
    out: (text) => {
      written.out += text;
    },
    err: (text) => {
      written.err += text;
    },
  });
  return { status, ...written };
}

/** What one run of a command line that must succeed prints in every format: each is made of the same findings. */
export async function callEveryFormat(args: readonly string[]): Promise<{ text: string; json: unknown; csv: string }> {
  const printed = { text: '', json: '', csv: '' };
  const ran = { out: () => {}, err: (text: string) => expect.fail(text) };
  await runCommandLine(args, ran, async (report) => {
    for (const format of ['text', 'json', 'csv'] as const) printed[format] = await formatReport(report, format);
    return '';
  });
  return { ...printed, json: JSON.parse(printed.json) };
}

/** Color and other control characters, which pipes and files would keep. */
// eslint-disable-next-line no-control-regex -- control characters are what is looked for
export const CONTROL_CHARACTERS = /[\u0000-\u0009\u000b-\u001f\u007f]/;

/** The JSON of a command line that must succeed. */
export async function callJson(args: readonly string[]): Promise<unknown> {
  return jsonOf(await callKilter([...args, '--json']));
}

export function jsonOf(ran: Ran): unknown {
  if (ran.status !== 0) throw new Error(`exit code ${ran.status}: ${ran.err}`);
  return JSON.parse(ran.out);
}
