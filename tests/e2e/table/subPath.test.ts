import { afterAll, beforeAll, expect, it } from 'vitest';
import { setLiveTable, type LiveTable } from '../../support/liveTable.ts';

const SMALL = { width: 800, height: 600 };

let live: LiveTable;
beforeAll(async () => {
  live = await setLiveTable({ settings: { KILTER_BASE_PATH: '/kilter' } });
});
afterAll(() => live.close());

it('below a path the page, its parts, a table and its link all work, and the check of the network finds the lines', async () => {
  const asked: string[] = [];
  const first = await live.openPage('/kilter', SMALL);
  expect(new URL(first.url()).pathname).toBe('/kilter/');
  first.on('request', (request) => asked.push(new URL(request.url()).pathname));
  first.on('websocket', (socket) => asked.push(new URL(socket.url()).pathname));
  await first.getByRole('button', { name: 'Open a table', exact: true }).click();
  const code = (await first.locator('.big-code').innerText()).replace(' ', '');
  expect(first.url()).toBe(`${live.origin}/kilter/#table=${code}`);
  expect(asked.filter((path) => !path.startsWith('/kilter/'))).toEqual([]);

  const second = await live.openPage(`/kilter/#table=${code}`, SMALL);
  await second.locator('.lobby').waitFor();
  await second.getByRole('button', { name: 'Take Flying' }).click();
  await first.getByRole('button', { name: 'Take Lead' }).click();
  await first.getByRole('button', { name: 'Begin the descent' }).click();
  await second.getByRole('region', { name: 'Flying', exact: true }).waitFor();

  const check = await live.openPage('/kilter/?network', SMALL);
  await check.getByText('works, ').nth(2).waitFor();
  expect(await check.getByRole('status').innerText()).toContain('over WebSocket');
  expect(live.faults).toEqual([]);
});
