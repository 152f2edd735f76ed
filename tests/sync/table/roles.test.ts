import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest';
import { joinSharedTable, openSharedTable, type TableLink } from '../../../client/net/index.ts';
import { playedModel } from '../../../engine/table/index.ts';
import { choiceOfDrill, DRILLS } from '../../../levels/index.ts';
import { laid } from '../../support/planChoice.ts';
import { createTabStore, startTestServer, until, type TestServer } from '../../support/tableServer.ts';

let server: TestServer;
const links: TableLink[] = [];
const [drill] = DRILLS;

function take(link: Awaited<ReturnType<typeof openSharedTable>>): TableLink {
  if (!link.ok) throw new Error(link.error.reason);
  links.push(link.value);
  return link.value;
}

const openDrill = async () => {
  const options = { origin: server.origin, store: createTabStore(), name: 'Fay', facilitates: true };
  return take(await openSharedTable({ ...options, choice: choiceOfDrill(drill!) }));
};
const join = async (name: string, { code = '' }: TableLink, role?: 'crew' | 'observer' | 'room screen') =>
  take(await joinSharedTable({ origin: server.origin, store: createTabStore(), name, code, ...(role && { role }) }));

beforeAll(async () => {
  server = await startTestServer({ model: playedModel, plan: (choice = choiceOfDrill(drill!)) => laid(choice) });
});
afterEach(() => {
  for (const link of links.splice(0)) link.leave();
});
afterAll(() => server.close());

describe('a table that is opened for a drill', () => {
  it('is run by who opened it; who joins is crew, watches, or is the room screen', async () => {
    const fay = await openDrill();
    const [ada, ola, wall] = [
      await join('Ada', fay),
      await join('Ola', fay, 'observer'),
      await join('Wall', fay, 'room screen'),
    ];
    expect([fay, ada, ola, wall].map(({ view }) => view?.you.role)).toEqual([
      'facilitator',
      'crew',
      'observer',
      'room screen',
    ]);
    expect(ada.view?.drill?.title).toBe(drill?.title);
    expect(await ada.command({ kind: 'takeSeat', seat: 'lead' })).toEqual({ ok: true });
    expect(await ada.command({ kind: 'begin' })).toMatchObject({ ok: false, error: { code: 'table/not-facilitator' } });
    expect(await wall.command({ kind: 'takeSeat', seat: 'site' })).toMatchObject({ ok: false });
    expect(await fay.command({ kind: 'begin' })).toEqual({ ok: true });
  });

  it('gives the whole drill to facilitator and evaluator, and to nobody else before the end', async () => {
    const fay = await openDrill();
    const [ada, eve] = [await join('Ada', fay), await join('Eve', fay, 'observer')];
    const text = await fay.drillText();
    expect(text.ok && JSON.parse(text.value)).toEqual(JSON.parse(JSON.stringify(drill)));
    for (const link of [ada, eve]) expect(await link.drillText()).toMatchObject({ error: { code: 'table/hidden' } });
    await fay.command({ kind: 'setRole', member: eve.view?.you.id ?? '', role: 'evaluator' });
    expect((await eve.drillText()).ok).toBe(true);
  });

  it('closes the line of who is removed, and keeps no place for them', async () => {
    const fay = await openDrill();
    const ada = await join('Ada', fay);
    await fay.command({ kind: 'remove', member: ada.view?.you.id ?? '' });
    await until('the line to close', () => ada.state === 'closed');
    expect(ada.closedBecause).toMatch(/removed/);
    await until('her place to be given up', () => fay.view?.others.length === 0);
  });

  it('is open to no second facilitator', async () => {
    const fay = await openDrill();
    const raw = await fetch(`${server.origin}/matchmake/join/table`, {
      method: 'POST',
      headers: { 'content-type': 'application/json' },
      body: JSON.stringify({ code: (fay.code ?? '').replaceAll(' ', ''), name: 'Mallory', role: 'evaluator' }),
    });
    expect(raw.ok).toBe(false);
    // a role that a person may ask for, but not here
    const store = createTabStore();
    const options = { origin: server.origin, store, name: 'Mallory', code: fay.code ?? '' };
    const asked = await joinSharedTable({ ...options, role: 'facilitator' as 'crew' });
    expect(asked).toMatchObject({ ok: false });
    expect(asked.ok ? '' : asked.error.reason).toMatch(/Only who opens a table/);
  });
});
