import { afterEach, expect, it } from 'vitest';
import { openSpreader, type Spreader } from '../support/spreader.ts';
import { enterTable, startTestServer, type TestServer } from '../support/tableServer.ts';

let server: TestServer;
let proxy: Spreader;
afterEach(async () => {
  await proxy.close();
  await server.close();
});

it.each([
  ['takes the path away', '/kilter', ''],
  ['leaves it in the address', '', '/kilter'],
])('two people sit down at a table below a path, behind a proxy that %s', async (_what, under, basePath) => {
  server = await startTestServer({}, { KILTER_BASE_PATH: basePath });
  proxy = await openSpreader(under);
  proxy.add(server.port);
  const base = `${proxy.origin}/kilter/`;
  const ada = await enterTable(base, 'Ada');
  const bo = await enterTable(base, 'Bo', ada.code);
  expect(await bo.command({ kind: 'takeSeat', seat: 'flying' })).toEqual({ ok: true, value: undefined });
  expect((await fetch(`${base}api/health`)).status).toBe(200);
  for (const link of [ada, bo]) link.leave();
});
