import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { joinSharedTable, type TableLink } from '../../../client/net/index.ts';
import { freePort, startRedis } from '../../support/redis.ts';
import { addressOf, endProcesses, startProcess } from '../../support/serverProcess.ts';
import { createTabStore, enterTable, startTestServer, until } from '../../support/tableServer.ts';
import { openSpreader, type Spreader } from '../../support/spreader.ts';

let redis: Awaited<ReturnType<typeof startRedis>>;
let spreader: Spreader;
const folder = mkdtempSync(path.join(tmpdir(), 'kilter-processes-'));

beforeAll(async () => {
  redis = await startRedis();
});
beforeEach(async () => {
  spreader = await openSpreader();
});
afterEach(async () => {
  endProcesses();
  await spreader.close();
});
afterAll(async () => {
  await redis.stop();
  rmSync(folder, { recursive: true });
});

/** A process of several: browsers reach it by a path of its own below the name of all. */
async function startOne(records: string): Promise<ReturnType<typeof startProcess> & { readonly port: number }> {
  const port = await freePort();
  const run = startProcess({
    PORT: String(port),
    KILTER_REDIS: redis.address,
    KILTER_PUBLIC_ADDRESS: `${new URL(spreader.origin).host}/p${port}`,
    KILTER_RECORDS: records,
  });
  await addressOf(run);
  spreader.add(port);
  return { ...run, port };
}

async function tablesOf({ port }: { readonly port: number }): Promise<number> {
  const health = (await (await fetch(`http://127.0.0.1:${port}/api/health`)).json()) as { tables: number };
  return health.tables;
}

describe('two processes under one name', () => {
  it('share the tables out, open a code from either, and take up what the other leaves when it is killed', async () => {
    const records = path.join(folder, 'shared');
    const runs = [await startOne(records), await startOne(records)];
    const tables: TableLink[] = [];
    for (const name of ['Ada', 'Bo', 'Cy', 'Di']) tables.push(await enterTable(spreader.origin, name));
    expect(await Promise.all(runs.map(tablesOf))).toEqual([2, 2]);

    // every code is asked of both processes in turn
    const guests = [];
    for (const { code } of tables)
      for (const name of ['Ed', 'Flo']) guests.push(await enterTable(spreader.origin, name, code));
    const [ada] = tables;
    const seated = [];
    for (const link of tables) seated.push(await link.command({ kind: 'takeSeat', seat: 'flying' }));
    for (const link of tables) seated.push(await link.command({ kind: 'begin' }));
    expect(seated).toEqual(seated.map(() => ({ ok: true, value: undefined })));
    const ticks = () => tables.map(({ view }) => view?.flight.tick ?? 0);
    await until('a second of every descent', () => ticks().every((tick) => tick > 60), 60_000);

    const before = ticks();
    spreader.remove(runs[0]?.port ?? 0);
    runs[0]?.child.kill('SIGKILL');
    await until('somebody to notice', () => tables.some(({ state }) => state === 'reconnecting'), 60_000);
    const all = [...tables, ...guests];
    await until('everybody back', () => all.every(({ state }) => state === 'connected'), 60_000);
    expect(await Promise.all(runs.slice(1).map(tablesOf))).toEqual([4]);
    for (const [i, { view }] of tables.entries()) {
      expect(view).toMatchObject({ stage: 'descending', you: { seat: 'flying' } });
      // at most half a second before what was seen last
      expect(view?.flight.tick).toBeGreaterThan((before[i] ?? 0) - 31);
    }
    await until(
      'those of the killed process to be on hold',
      () => tables.filter(({ view }) => view?.held).length === 2,
    );
    const held = tables.find(({ view }) => view?.held);
    expect((await held?.command({ kind: 'resume' }))?.ok).toBe(true);
    all.push(await enterTable(spreader.origin, 'Gus', ada?.code));

    // left by everybody, a table is gone under its code
    for (const link of all) link.leave();
    expect(await joinUntilGone(ada?.code ?? '')).toBe('table/no-table');
  });
});

/** The answer once nobody is there any more: leaving takes a moment to arrive, and each attempt counts. */
async function joinUntilGone(code: string): Promise<string> {
  for (;;) {
    const joined = await joinSharedTable({ origin: spreader.origin, name: 'Hal', store: createTabStore(), code });
    if (!joined.ok && joined.error.code === 'table/no-table') return joined.error.code;
    if (joined.ok) joined.value.leave();
    await new Promise((resolve) => setTimeout(resolve, 500));
  }
}

describe('a process of several', () => {
  it('that finds no Redis does not start, and says which setting is meant', async () => {
    const settings = { KILTER_REDIS: 'redis://127.0.0.1:9', KILTER_PUBLIC_ADDRESS: 'kilter.test/p1' };
    await expect(startTestServer({}, settings)).rejects.toThrow('KILTER_REDIS: nothing answers there');
  });
});
