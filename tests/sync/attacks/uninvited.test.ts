import { afterAll, beforeAll, expect, it } from 'vitest';
import { joinSharedTable, resumeSharedTable, type TableLink } from '../../../client/net/index.ts';
import { createTabStore, enterTable, startTestServer, until, type TestServer } from '../../support/tableServer.ts';

let server: TestServer;
beforeAll(async () => {
  server = await startTestServer();
});
afterAll(() => server.close());

const idOf = ({ view }: TableLink) => view?.you.id ?? '';

function taken(joined: Awaited<ReturnType<typeof joinSharedTable>>): TableLink {
  if (!joined.ok) throw new Error(joined.error.reason);
  return joined.value;
}

it('a stranger with the code seats himself in no running descent, is sent away, comes back with no old token, and then finds the table locked', async () => {
  const ada = await enterTable(server.origin, 'Ada');
  const ofBo = createTabStore();
  const bo = taken(await joinSharedTable({ origin: server.origin, store: ofBo, name: 'Bo', code: ada.code ?? '' }));
  await ada.command({ kind: 'takeSeat', seat: 'lead' });
  await ada.command({ kind: 'begin' });
  const options = { origin: server.origin, store: createTabStore() };
  const mallory = taken(await joinSharedTable({ ...options, name: 'Mallory', code: ada.code ?? '' }));
  const token = options.store.load();

  const refused = { ok: false, error: { code: 'table/not-let-in' } };
  expect(await mallory.command({ kind: 'takeSeat', seat: 'flying' })).toMatchObject(refused);
  expect(await mallory.command({ kind: 'setLock', locked: true })).toMatchObject({ ok: false });
  expect(await mallory.command({ kind: 'remove', member: idOf(ada) })).toMatchObject({ ok: false });
  // somebody who was here before may sit down, and whoever is let in
  expect(await bo.command({ kind: 'takeSeat', seat: 'site' })).toMatchObject({ ok: true });

  expect(await ada.command({ kind: 'remove', member: idOf(mallory) })).toMatchObject({ ok: true });
  await until('the line to close', () => mallory.state === 'closed');
  expect(mallory.closedBecause).toMatch(/removed/);
  if (token !== undefined) options.store.save(token);
  expect(await resumeSharedTable(options)).toMatchObject({ ok: false, error: { code: 'table/no-place' } });

  expect(await ada.command({ kind: 'setLock', locked: true })).toMatchObject({ ok: true });
  await until('everybody to see it', () => bo.view?.locked === true);
  const again = await joinSharedTable({ ...options, name: 'Mallory', code: ada.code ?? '' });
  expect(again.ok ? '' : again.error.reason).toContain('locked');
  // who has a place comes back to it, in another window here
  const back = await resumeSharedTable({ origin: server.origin, store: ofBo });
  expect(back).toMatchObject({ ok: true });
  await until('the other window to take over', () => bo.state === 'closed');

  await ada.command({ kind: 'setLock', locked: false });
  const guest = await enterTable(server.origin, 'Cy', ada.code);
  // whoever decides sends nobody away whose table it is
  await ada.command({ kind: 'leaveSeat' });
  if (back?.ok === true) await back.value.command({ kind: 'handOver', member: idOf(guest) });
  expect(await guest.command({ kind: 'remove', member: idOf(ada) })).toMatchObject({
    ok: false,
    error: { code: 'table/opener' },
  });
  for (const link of [ada, guest]) link.leave();
  if (back?.ok === true) back.value.leave();
});
