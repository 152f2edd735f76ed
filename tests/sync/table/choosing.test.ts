import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest';
import { joinSharedTable, openSharedTable, resumeSharedTable, type TableLink } from '../../../client/net/index.ts';
import { playedModel, type PlanChoice } from '../../../engine/table/index.ts';
import { firstLanding } from '../../../levels/index.ts';
import { choiceOf, laid } from '../../support/planChoice.ts';
import { createTabStore, startTestServer, until, type TestServer } from '../../support/tableServer.ts';

const folder = mkdtempSync(path.join(tmpdir(), 'kilter-choosing-'));
let server: TestServer;
const links: TableLink[] = [];

const start = () =>
  startTestServer(
    { model: playedModel, plan: (choice) => (choice === undefined ? firstLanding(1) : laid(choice)) },
    { KILTER_RECORDS: folder },
  );

async function open(name: string, store = createTabStore()): Promise<TableLink> {
  const opened = await openSharedTable({ origin: server.origin, store, name });
  if (!opened.ok) throw new Error(opened.error.reason);
  links.push(opened.value);
  return opened.value;
}

async function join(name: string, code: string): Promise<TableLink> {
  const joined = await joinSharedTable({ origin: server.origin, store: createTabStore(), name, code });
  if (!joined.ok) throw new Error(joined.error.reason);
  links.push(joined.value);
  return joined.value;
}

async function choose(link: TableLink, choice: PlanChoice): Promise<unknown> {
  if (link.choose === undefined) throw new Error('a shared table has a lobby');
  return link.choose(choice);
}

const OTHER = choiceOf({ lander: 'steeple', site: 'coombe-ledge', start: 'low', mode: 'by orders', pace: 0.5 });

beforeAll(async () => {
  server = await start();
});
afterEach(() => {
  for (const link of links.splice(0)) link.leave();
});
afterAll(async () => {
  await server.close();
  rmSync(folder, { recursive: true });
});

describe('in the lobby', () => {
  it('whoever decides chooses anew what is played; everybody sees it and keeps their seat', async () => {
    const ada = await open('Ada');
    const bo = await join('Bo', ada.code ?? '');
    await ada.command({ kind: 'takeSeat', seat: 'site' });
    await bo.command({ kind: 'takeSeat', seat: 'flying' });
    expect(await choose(ada, OTHER)).toMatchObject({ ok: false, error: { code: 'table/not-deciding' } });
    expect(await choose(bo, OTHER)).toEqual({ ok: true });
    await until('the other plan', () => [ada, bo].every((link) => link.view?.plan.landerId === 'steeple'));
    expect(ada.view).toMatchObject({ pace: 0.5, you: { seat: 'site' }, plan: { choice: OTHER } });
    expect(bo.view?.you.seat).toBe('flying');
    expect(bo.view?.orders?.descentRateTenths).toBe(0);

    // it is that which begins, and then it stays
    await bo.command({ kind: 'begin' });
    expect(await choose(bo, choiceOf({}))).toMatchObject({ ok: false, error: { code: 'table/stage' } });
    await until('the descent', () => (ada.view?.flight.tick ?? 0) > 3);
    expect(ada.view?.flight.height).toBeLessThan(20);
  });

  it('refuses what cannot be flown, and who does not sit, in words', async () => {
    const ada = await open('Ada');
    expect(await choose(ada, OTHER)).toMatchObject({ error: { code: 'table/not-seated' } });
    await ada.command({ kind: 'takeSeat', seat: 'lead' });
    expect(await choose(ada, choiceOf({ lander: 'bolster', world: 'mars' }))).toMatchObject({
      error: { code: 'table/plan', reason: expect.stringMatching(/world: expected one that Bolster can fly/) },
    });
    expect(ada.view?.plan.landerId).toBe('trivet');
  });

  it('what was chosen last is taken up by a server that starts again, with everybody in their seats', async () => {
    const store = createTabStore();
    const ada = await open('Ada', store);
    const code = ada.code ?? '';
    const gone = await join('Gone', code);
    gone.leave();
    const bo = await join('Bo', code);
    await ada.command({ kind: 'takeSeat', seat: 'lead' });
    await bo.command({ kind: 'takeSeat', seat: 'flying' });
    expect(await choose(ada, choiceOf({ lander: 'bolster' }))).toEqual({ ok: true });
    expect(await choose(ada, OTHER)).toEqual({ ok: true });
    await server.close();
    server = await start();
    const back = await resumeSharedTable({ origin: server.origin, store });
    if (back?.ok !== true) throw new Error(back?.error.reason ?? 'no place is kept');
    links.push(back.value);
    expect(back.value.code).toBe(code);
    expect(back.value.view).toMatchObject({ plan: { choice: OTHER }, you: { id: 'm1', seat: 'lead' } });
    expect(back.value.view?.seats.find(({ seat }) => seat === 'flying')?.name).toBe('Bo');
    expect(server.reports.filter((line) => !line.includes('too slow or too busy'))).toEqual([]);
  });
});
