import { fork } from 'node:child_process';
import { once } from 'node:events';
import { setTimeout as pause } from 'node:timers/promises';
import type { Room } from '@colyseus/sdk';
import { SEATS } from '../../engine/table/index.ts';
import { textTable } from '../../server/cli/textTable.ts';
import { askVotes, type HallAnswer, type HallHeaders } from '../support/askVotes.ts';
import { openCrowd } from '../support/phoneCrowd.ts';
import { askSpent, countOnly, openTable } from './manyTables.ts';

/**
 * Phones of a hall beside running tables on the same server, for five minutes or as many as are said: how late the ticks of the tables come, and what the server
 * holds, without the phones and with them. Every half minute one question or one flight after the other is asked, and every vote and landing is counted.
 *
 *     node tests/bench/hallPhones.ts [minutes] [phones] [tables]
 */
const [minutes = 5, phones = 200, tables = 10] = process.argv.slice(2).map(Number);
/** Of one question, and of what is measured without phones, between rows [ms]. */
const ROUND_MS = 30_000;
const DESCENT = { lander: 'trivet', site: 'saddlers-bench', world: 'moon', start: 'high', seed: 1 };

const server = fork(new URL('tableServer.ts', import.meta.url));
const [origin] = (await once(server, 'message')) as [string];
const rooms: Room[] = [];
for (let table = 0; table < tables; table += 1) rooms.push(...(await openTable(origin, table)));
for (const room of rooms) countOnly(room, { bytes: 0 });
/** Descents at rest cost nothing: whoever runs a table begins anew. */
const again = setInterval(() => {
  for (let first = 0; first < rooms.length; first += SEATS.length)
    rooms[first]?.request('command', { kind: 'again' }).catch(() => undefined);
}, ROUND_MS);

const rows: string[][] = [];
async function measure(what: string, act: () => Promise<string>): Promise<void> {
  await askSpent(server);
  const begunMs = performance.now();
  const words = await act();
  await pause(Math.max(0, ROUND_MS - (performance.now() - begunMs)));
  const { lateMs, processorUs, residentKb } = await askSpent(server);
  const late = lateMs.toSorted((a, b) => a - b);
  const at = (share: number) => late[Math.floor(share * (late.length - 1))] ?? NaN;
  const figures = [at(0.5), at(0.99), (100 * processorUs) / (performance.now() - begunMs) / 1000, residentKb / 1000];
  rows.push([what, words, String(late.length), ...figures.map((figure) => figure.toPrecision(3))]);
  console.log(rows.at(-1)?.join('  '));
}

const ask = async (path: string, body?: object, as: HallHeaders = {}) => (await askVotes(origin, path, body, as)).json;
await pause(5000);
await measure('no phones', () => Promise.resolve('-'));
await measure('no phones', () => Promise.resolve('-'));

const { code, key } = await ask('', {});
/** Waits until all are there, or so long that some are lost. */
async function counted(all: number, countOf: (seen: HallAnswer) => number): Promise<string> {
  const untilMs = performance.now() + 4 * ROUND_MS;
  let count = 0;
  while (count < all && performance.now() < untilMs) {
    await pause(500);
    count = countOf(await ask('/seen', undefined, { code, key }));
  }
  return `${count} of ${all}`;
}
const pilots = Math.ceil(phones * 0.9);
const crowd = openCrowd({
  origin,
  code,
  phones,
  choiceOf: (i) => (i < pilots ? 0 : 1),
  flownMs: (i) => 8000 + (8000 * i) / phones,
  lookMs: 2000,
});
for (let round = 0; round < (minutes * 60_000) / ROUND_MS; round += 1) {
  const isFlight = round % 2 === 1;
  await measure(isFlight ? 'flight' : 'vote', async () => {
    const question = { question: `Round ${round}?`, choices: ['A', 'B'], isOpen: true };
    await ask('/ask', isFlight ? { ...question, descent: DESCENT } : question, { code, key });
    const votes = await counted(phones, ({ counts = [] }) => counts.reduce((total, one) => total + one, 0));
    if (!isFlight) return `${votes} votes`;
    await ask('/begin', {}, { code, key });
    return `${votes} votes, ${await counted(pilots, ({ flown }) => flown?.landings.length ?? 0)} landings`;
  });
}
await crowd.end();
clearInterval(again);
const headings = ['round', 'counted', 'ticks', 'late p50, ms', 'late p99, ms', 'processor, %', 'resident, MB'];
console.log(
  textTable(
    headings.map((heading) => ({ heading, align: 'right' })),
    rows,
  ),
);
const said = [...crowd.refusals].map(([what, count]) => `${what}: ${count}`).join(', ');
console.log(
  `${phones} phones beside ${tables} tables of five: ${crowd.answers} answers. Not taken at first: ${said || 'none'}.`,
);
server.kill();
process.exit(0);
