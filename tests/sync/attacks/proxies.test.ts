import { request } from 'node:http';
import { Client, type Room } from '@colyseus/sdk';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { Welcome } from '../../../server/messages/index.ts';
import { ENTERING_RATE } from '../../../server/rooms/index.ts';
import { countAttempts } from '../../support/attempts.ts';
import { startTestServer, type TestServer } from '../../support/tableServer.ts';
import { openRelay, type Relay } from '../../support/throughProxy.ts';

let server: TestServer;
/** By no proxy of ours. */
let stranger: Relay;

beforeAll(async () => {
  server = await startTestServer(
    {},
    { KILTER_TRUSTED_PROXIES: '127.0.0.1, 203.0.113.0/24', KILTER_HOSTS: '127.0.0.1, kilter.example' },
  );
  stranger = await openRelay(server.port, undefined, '127.0.0.9');
});
afterAll(async () => {
  await stranger.close();
  await server.close();
});

/** As a proxy hands it on. */
async function ask(origin: string, what: 'create' | 'join', body: object, headers: Record<string, string>) {
  const answer = await fetch(`${origin}/matchmake/${what}/table`, {
    method: 'POST',
    headers: { 'content-type': 'application/json', ...headers },
    body: JSON.stringify(body),
  });
  return { status: answer.status, body: (await answer.json()) as Record<string, unknown> };
}

describe('behind two proxies', () => {
  it('a request is answered whose protocol is told twice', async () => {
    const headers = { 'x-forwarded-proto': 'https, http', 'x-forwarded-for': '198.51.100.1, 203.0.113.5' };
    expect((await ask(server.origin, 'create', { name: 'Ada' }, headers)).status).toBe(200);
  });

  it('one spoiler shuts out himself alone, and nobody is believed who is no proxy', async () => {
    const spoiler = { 'x-forwarded-for': '198.51.100.66' };
    const statuses = [];
    const mostNow = countAttempts();
    while (statuses.length < mostNow() + 5)
      statuses.push((await ask(server.origin, 'create', { name: '' }, spoiler)).status);
    expect(statuses).toContain(429);
    expect((await ask(server.origin, 'create', { name: 'Bo' }, { 'x-forwarded-for': '198.51.100.2' })).status).toBe(
      200,
    );
    expect((await ask(stranger.origin, 'create', { name: 'Cy' }, spoiler)).status).toBe(200);
  });

  it('a page of another site, and a name that is not ours, are turned away', async () => {
    const other = await ask(server.origin, 'create', { name: 'Eve' }, { origin: 'https://elsewhere.example' });
    expect(other.status).toBe(403);
    const own = await ask(server.origin, 'create', { name: 'Ada' }, { origin: server.origin });
    expect(own.status).toBe(200);
    expect(await statusFor('elsewhere.example')).toBe(421);
    expect(await statusFor('kilter.example')).toBe(200);
  });
});

/** Status of a request for a name, by way of a proxy. */
function statusFor(host: string): Promise<number | undefined> {
  return new Promise((resolve, reject) => {
    const headers = { host, 'x-forwarded-for': '198.51.100.1' };
    const asked = request({ host: '127.0.0.1', port: server.port, path: '/api/health', headers });
    asked.on('response', (answer) => resolve(answer.resume().statusCode)).on('error', reject);
    asked.end();
  });
}

describe('coming back', () => {
  it('is free for who has a place, so that a whole class is back at once, and renews what proves it', async () => {
    const room: Room = await new Client(server.origin).create('table', { name: 'Ada' });
    room.reconnection.enabled = false;
    const first = await new Promise<Welcome>((resolve) => room.onMessage('welcome', resolve));
    const headers = { 'x-forwarded-for': '198.51.100.3' };
    const statuses = new Set<number>();
    for (let i = 0; i < 2 * ENTERING_RATE.burst; i += 1) {
      const { code, resume } = first;
      const back = await ask(server.origin, 'join', { code, name: 'Ada', resume }, headers);
      statuses.add(back.status);
      // what proxies write down names no code
      expect(JSON.stringify([back.body['roomId'], back.body['sessionId'], back.body['processId']])).not.toContain(code);
    }
    expect([...statuses]).toEqual([200]);
    const again = await comeBack(first);
    const third = await comeBack(again);
    expect(new Set([first.resume, again.resume, third.resume]).size).toBe(3);
    await expect(comeBack(first)).rejects.toThrow('given up');
    expect((await comeBack(again)).memberId).toBe(first.memberId);
  });
});

async function comeBack({ code, resume }: Welcome): Promise<Welcome> {
  const room: Room = await new Client(server.origin).join('table', { code, name: 'Ada', resume });
  room.reconnection.enabled = false;
  return new Promise((resolve) => room.onMessage('welcome', resolve));
}
