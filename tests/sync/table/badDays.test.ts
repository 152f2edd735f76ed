import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { joinSharedTable, openSharedTable, resumeSharedTable, type TableLink } from '../../../client/net/index.ts';
import type { PlaceStore } from '../../../client/net/place.ts';
import { createTabStore, startTestServer, until, type TestServer } from '../../support/tableServer.ts';
import { openRelay, type Relay } from '../../support/throughProxy.ts';

let server: TestServer;
let relay: Relay;
const links: TableLink[] = [];

/** A member in a tab of their own, behind a network of their own. */
async function open(name: string, store: PlaceStore = createTabStore()): Promise<TableLink> {
  return keep(await openSharedTable({ origin: relay.origin, store, name }));
}

function keep(opened: Awaited<ReturnType<typeof openSharedTable>> | undefined): TableLink {
  if (opened?.ok !== true) throw new Error(opened?.error.reason ?? 'no place is kept');
  links.push(opened.value);
  return opened.value;
}

/** A second member at the same table, whose own network works. */
async function watcher(code: string | undefined): Promise<TableLink> {
  return keep(await joinSharedTable({ origin: server.origin, store: createTabStore(), name: 'Bo', code: code ?? '' }));
}

function flyingSeat(link: TableLink) {
  return link.view?.seats.find(({ seat }) => seat === 'flying');
}

beforeAll(async () => {
  server = await startTestServer({}, { KILTER_SEAT_KEPT_SECONDS: '5' });
});
beforeEach(async () => {
  relay = await openRelay(server.port);
});
afterEach(async () => {
  for (const link of links.splice(0)) link.leave();
  await relay.close();
});
afterAll(() => server.close());

describe('a network that drops', () => {
  it('mid-descent brings the member back to the same seat by itself, within five seconds', async () => {
    const ada = await open('Ada');
    const bo = await watcher(ada.code);
    await ada.command({ kind: 'takeSeat', seat: 'flying' });
    await ada.command({ kind: 'begin' });
    await ada.command({ kind: 'setThrust', percent: 90 });
    await until('the thrust', () => bo.view?.flight.commanded.thrustPercent === 90);
    const cutMs = performance.now();
    relay.cut();
    await until('Ada to notice', () => ada.state === 'reconnecting');
    expect(await ada.command({ kind: 'setThrust', percent: 10 })).toMatchObject({ error: { code: 'table/line-down' } });
    await until('Ada to be back', () => ada.state === 'connected');
    expect(performance.now() - cutMs).toBeLessThan(5000);
    expect(ada.view?.you).toMatchObject({ id: 'm1', name: 'Ada', seat: 'flying' });
    // a short drop is not noticed by whoever looks at the controls
    expect(ada.view?.flight.commanded.thrustPercent).toBe(90);
    expect(await ada.command({ kind: 'setThrust', percent: 80 })).toEqual({ ok: true });
    await until('the thrust', () => bo.view?.flight.commanded.thrustPercent === 80);
    expect(bo.view?.seats.filter(({ name }) => name !== undefined)).toHaveLength(1);
  });

  it('shows the others that the member is away, keeps the last view, and keeps trying', async () => {
    const ada = await open('Ada');
    const bo = await watcher(ada.code);
    await ada.command({ kind: 'takeSeat', seat: 'flying' });
    await until('Ada to sit', () => flyingSeat(bo)?.connected === true);
    relay.refuse();
    relay.cut();
    await until('Bo to see it', () => flyingSeat(bo)?.connected === false);
    expect(flyingSeat(bo)?.name).toBe('Ada');
    expect(ada.view?.you.seat).toBe('flying');
    await new Promise((resolve) => setTimeout(resolve, 900));
    relay.accept();
    await until('Ada to be back', () => flyingSeat(bo)?.connected === true);
    await until('Ada to know it', () => ada.state === 'connected');
  });

  it('for longer than the seat is kept frees the seat and closes the link with the reason', async () => {
    const ada = await open('Ada');
    const bo = await watcher(ada.code);
    await ada.command({ kind: 'takeSeat', seat: 'flying' });
    await until('Ada to sit', () => flyingSeat(bo)?.name === 'Ada');
    relay.refuse();
    relay.cut();
    await until('the seat to be free', () => flyingSeat(bo)?.name === undefined, 8000);
    expect(await bo.command({ kind: 'takeSeat', seat: 'flying' })).toEqual({ ok: true });
    relay.accept();
    await until('Ada to be told', () => ada.state === 'closed', 8000);
    expect(ada.closedBecause).toContain('Your place at this table was given up');
  });

  it('without a word is noticed by the client itself', async () => {
    const ada = await open('Ada');
    relay.freeze();
    await until('Ada to notice', () => ada.state === 'reconnecting', 8000);
    await until('Ada to be back', () => ada.state === 'connected');
    expect(ada.view?.you.name).toBe('Ada');
  });
});

describe('a server that is stopped', () => {
  it('is waited for, and a table that went with it is called closed', async () => {
    const ada = await open('Ada');
    const { port } = server;
    await server.close();
    await until('Ada to notice', () => ada.state === 'reconnecting');
    server = await startTestServer({}, { PORT: String(port), KILTER_SEAT_KEPT_SECONDS: '5' });
    await until('Ada to be told', () => ada.state === 'closed', 8000);
    expect(ada.closedBecause).toBe('This table is no longer open.');
  });
});

describe('a page that is reloaded', () => {
  it('comes back to its seat, mid-descent, and nothing is lost', async () => {
    const tab = createTabStore();
    const ada = await open('Ada', tab);
    const bo = await watcher(ada.code);
    await ada.command({ kind: 'takeSeat', seat: 'flying' });
    await ada.command({ kind: 'begin' });
    await ada.command({ kind: 'setTilt', degrees: 7 });
    await until('the tilt', () => bo.view?.flight.commanded.tiltDeg === 7);
    // the old page is gone without leaving; its socket may linger
    const again = keep(await resumeSharedTable({ origin: server.origin, store: tab }));
    expect(again.code).toBe(ada.code);
    expect(again.view?.you).toMatchObject({
      id: 'm1',
      name: 'Ada',
      seat: 'flying',
      holds: { thrust: true, tilt: true },
    });
    expect(again.view?.flight.commanded.tiltDeg).toBe(7);
    expect(again.view?.stage).toBe('descending');
    expect(await again.command({ kind: 'setTilt', degrees: -7 })).toEqual({ ok: true });
    await until('the tilt', () => bo.view?.flight.commanded.tiltDeg === -7);
  });

  it('of both members at once finds the table still there', async () => {
    const [tabA, tabB] = [createTabStore(), createTabStore()];
    const ada = await open('Ada', tabA);
    keep(await joinSharedTable({ origin: relay.origin, store: tabB, name: 'Bo', code: ada.code ?? '' }));
    await ada.command({ kind: 'takeSeat', seat: 'flying' });
    relay.refuse();
    relay.cut();
    await new Promise((resolve) => setTimeout(resolve, 1500));
    const [a, b] = [
      keep(await resumeSharedTable({ origin: server.origin, store: tabA })),
      keep(await resumeSharedTable({ origin: server.origin, store: tabB })),
    ];
    expect(a.view?.you).toMatchObject({ name: 'Ada', seat: 'flying' });
    expect(b.view?.you.name).toBe('Bo');
  });

  it('has no place to go back to when the tab never sat anywhere, or left', async () => {
    const tab = createTabStore();
    expect(await resumeSharedTable({ origin: server.origin, store: tab })).toBeUndefined();
    const ada = await open('Ada', tab);
    ada.leave();
    expect(await resumeSharedTable({ origin: server.origin, store: tab })).toBeUndefined();
  });

  it('with a forged token is refused, and forgets it', async () => {
    const tab = createTabStore();
    const ada = await open('Ada', tab);
    const forged = createTabStore();
    forged.save({ code: (ada.code ?? '').replace(' ', ''), name: 'Eve', resume: 'x'.repeat(21) });
    const refused = await resumeSharedTable({ origin: server.origin, store: forged });
    expect(refused).toMatchObject({ ok: false, error: { code: 'table/no-place' } });
    expect(forged.load()).toBeUndefined();
    expect(ada.state).toBe('connected');
  });
});

describe('the same place in two windows', () => {
  it('belongs to the newer one; the older is closed with the reason and does not fight back', async () => {
    const tab = createTabStore();
    const older = await open('Ada', tab);
    const newer = keep(await resumeSharedTable({ origin: server.origin, store: tab }));
    await until('the older to close', () => older.state === 'closed');
    expect(older.closedBecause).toBe('This place was opened in another window.');
    await new Promise((resolve) => setTimeout(resolve, 400));
    expect(newer.state).toBe('connected');
    expect(await newer.command({ kind: 'takeSeat', seat: 'lead' })).toEqual({ ok: true });
  });
});
