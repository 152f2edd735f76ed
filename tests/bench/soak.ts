import { fork, type ChildProcess } from 'node:child_process';
import { once } from 'node:events';
import { mkdtempSync, readdirSync, rmSync, statSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { setTimeout as pause } from 'node:timers/promises';
import { joinSharedTable, openSharedTable, type TableLink } from '../../client/net/index.ts';
import { textTable } from '../../server/cli/textTable.ts';
import { createTabStore, until } from '../support/tableServer.ts';
import { openRelay, type Relay } from '../support/throughProxy.ts';
import type { ServerHolds } from './soakServer.ts';

/**
 * An hour of coming and going, in ten minutes or as many as are said: tables opened, joined, flown, left; lines dropped all at once, which come back; a part of
 * them over plain requests. What the server holds is told ten times, and should not grow. At the end the process is killed: the tables come back.
 *
 *     node tests/bench/soak.ts [minutes]
 */
const MINUTES = Number(process.argv[2] ?? 10);
const SAMPLES = 10;
/** Crews at the same time, each of which opens a table after the other. */
const CREWS = 8;
/** How long a crew flies [ms], and how often all lines are cut. */
const FLOWN_MS = 6000;
const CUT_MS = 15_000;
/** A step of coming back may take long on a busy machine [ms]. */
const PATIENCE_MS = 60_000;

const folder = mkdtempSync(path.join(tmpdir(), 'kilter-soak-'));
let server = await startServer('0');
const port = Number(new URL(server.origin).port);
const relays: readonly Relay[] = [await openRelay(port), await openRelay(port)];
// a school: every third crew comes from there
relays[1]?.cutUpgrades();
const state = { opened: 0, cuts: 0, refused: 0, isOver: false };

async function startServer(at: string): Promise<{ readonly child: ChildProcess; readonly origin: string }> {
  const options = { execArgv: ['--expose-gc'] };
  const child = fork(path.join(import.meta.dirname, 'soakServer.ts'), [folder, at], options);
  const [origin] = (await once(child, 'message')) as [string];
  return { child, origin };
}

async function crew(number: number): Promise<void> {
  const { origin } = relays[number % 3 === 0 ? 1 : 0] ?? server;
  while (!state.isOver) {
    const links = await sitDown(origin);
    if (links === undefined) {
      state.refused += 1;
      await pause(2000);
      continue;
    }
    state.opened += 1;
    await pause(FLOWN_MS);
    for (const link of links) {
      await until('everybody back', () => link.state !== 'reconnecting', PATIENCE_MS);
      link.leave();
    }
  }
}

/** A table of two that flies; undefined where that was refused. */
async function sitDown(origin: string): Promise<readonly TableLink[] | undefined> {
  const opened = await openSharedTable({ origin, name: 'Ada', store: createTabStore() });
  if (!opened.ok) return undefined;
  const ada = opened.value;
  const joined = await joinSharedTable({ origin, name: 'Bo', store: createTabStore(), code: ada.code ?? '' });
  await ada.command({ kind: 'takeSeat', seat: 'flying' });
  await ada.command({ kind: 'begin' });
  return joined.ok ? [ada, joined.value] : [ada];
}

async function sample(): Promise<ServerHolds & { readonly disk: number; readonly tables: number }> {
  server.child.send('what');
  const [holds] = (await once(server.child, 'message')) as [ServerHolds];
  const disk = readdirSync(folder).reduce((sum, file) => sum + statSync(path.join(folder, file)).size, 0);
  const { tables } = (await (await fetch(`${server.origin}/api/health`)).json()) as { readonly tables: number };
  return { ...holds, disk, tables };
}

/** Kills the process with one table in flight; how long until its crew is back [ms]. */
async function killed(): Promise<number> {
  const links = (await sitDown(relays[0]?.origin ?? '')) ?? [];
  await pause(1000);
  server.child.kill('SIGKILL');
  await until('the crew to notice', () => links.some(({ state }) => state === 'reconnecting'), PATIENCE_MS);
  const startMs = performance.now();
  server = await startServer(String(port));
  await until('the crew back', () => links.every(({ state }) => state === 'connected'), PATIENCE_MS);
  const tookMs = performance.now() - startMs;
  for (const link of links) link.leave();
  return tookMs;
}

const cutting = setInterval(() => {
  state.cuts += 1;
  for (const relay of relays) relay.cut();
}, CUT_MS);
const crews = Array.from({ length: CREWS }, (_, i) => crew(i));
const rows: string[][] = [];
for (let i = 1; i <= SAMPLES; i += 1) {
  await pause((MINUTES * 60_000) / SAMPLES);
  const { heap, resident, handles, descriptors, disk, lateMs, tables } = await sample();
  const figures = [tables, heap / 1e6, resident / 1e6, handles, descriptors, disk / 1e6, lateMs];
  rows.push([`${i}`, `${state.opened}`, ...figures.map((figure) => figure.toPrecision(4))]);
  console.log(rows.at(-1)?.join('  '));
}
state.isOver = true;
clearInterval(cutting);
await Promise.all(crews);
const back = await killed();
await pause(1000);
const headings = [
  'sample',
  'opened',
  'open now',
  'heap, MB',
  'resident, MB',
  'handles',
  'descriptors',
  'disk, MB',
  'late p99, ms',
];
console.log(
  textTable(
    headings.map((heading) => ({ heading, align: 'right' })),
    rows,
  ),
);
console.log(`${state.opened} tables, ${state.cuts} cuts of every line, ${state.refused} refusals.`);
console.log(`The process was killed: its crew was back after ${(back / 1000).toFixed(1)} s.`);
server.child.kill();
for (const relay of relays) await relay.close();
rmSync(folder, { recursive: true });
process.exit(0);
