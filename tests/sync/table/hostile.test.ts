import { request as httpRequest, type IncomingHttpHeaders } from 'node:http';
import { createConnection } from 'node:net';
import { Client, type Room } from '@colyseus/sdk';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { openSharedTable } from '../../../client/net/index.ts';
import type { TableModel } from '../../../engine/table/index.ts';
import { LARGEST_BODY } from '../../../server/http/index.ts';
import { COMMAND_RATE } from '../../../server/rooms/index.ts';
import { plainModel } from '../../support/plainTable.ts';
import { createTabStore, startTestServer, until, type TestServer } from '../../support/tableServer.ts';

/** Faults on purpose: a thrust of 66 % ends in an exception inside a step, a second descent in one inside the handler. */
const faultyModel: TableModel = {
  ...plainModel,
  createDescent(plan) {
    if (hasFlown) throw new Error('no second descent');
    const descent = plainModel.createDescent(plan);
    return {
      ...descent,
      step(input, valves, facing) {
        hasFlown ||= repeatFails;
        if (input.thrustPercent === 66) throw new Error('the world broke');
        return descent.step(input, valves, facing);
      },
    };
  },
};

/** Set by the test that wants a fault in the handler of 'again'. */
let repeatFails = false;
let hasFlown = false;

let server: TestServer;

beforeAll(async () => {
  server = await startTestServer({ model: faultyModel });
});
afterAll(() => server.close());

interface Answer {
  readonly status: number;
  readonly headers: IncomingHttpHeaders;
  readonly body: string;
}

/** A request with every byte as given: no library repairs it on the way. */
function ask(options: {
  readonly method?: string;
  readonly path: string;
  readonly headers?: Record<string, string>;
  readonly body?: string | Buffer;
}): Promise<Answer> {
  return new Promise((resolve, reject) => {
    const outgoing = httpRequest(
      {
        host: '127.0.0.1',
        port: server.port,
        method: options.method ?? 'GET',
        path: options.path,
        headers: options.headers ?? {},
      },
      (response) => {
        let body = '';
        response.on('data', (chunk: Buffer) => (body += chunk.toString()));
        response.on('end', () => resolve({ status: response.statusCode ?? 0, headers: response.headers, body }));
      },
    );
    outgoing.on('error', reject);
    outgoing.end(options.body);
  });
}

function post(path: string, body: string | Buffer, headers: Record<string, string> = {}): Promise<Answer> {
  const length = String(Buffer.byteLength(body));
  return ask({
    method: 'POST',
    path,
    body,
    headers: { 'content-type': 'application/json', 'content-length': length, ...headers },
  });
}

/** A line with nothing of ours between the test and the wire. */
async function openRoom(): Promise<Room> {
  const room: Room = await new Client(server.origin).create('table', { name: 'Eve' });
  room.onMessage('welcome', () => undefined);
  return room;
}

async function isAlive(): Promise<boolean> {
  const answer = await ask({ path: '/api/health' });
  return answer.status === 200;
}

describe('a message that is malformed', () => {
  it.each([
    ['nothing', undefined],
    ['null', null],
    ['text', 'begin'],
    ['a list', ['begin']],
    ['no kind', {}],
    ['an unknown kind', { kind: 'explode' }],
    ['a kind of every object', { kind: 'constructor' }],
    ['a field too many', { kind: 'begin', now: true }],
    ['a wrong type', { kind: 'setThrust', percent: '50' }],
    ['no number', { kind: 'setThrust', percent: Number.NaN }],
    ['a seat that is not there', { kind: 'takeSeat', seat: 'captain' }],
    ['a prototype', JSON.parse('{"kind":"begin","__proto__":{"x":1}}')],
    ['depth', JSON.parse(`${'['.repeat(60)}${']'.repeat(60)}`)],
  ])('by %s is refused with a reason, and the member stays', async (_what, message) => {
    const room = await openRoom();
    let left = 0;
    room.onLeave(() => (left += 1));
    const answer: unknown = await room.request('command', message);
    expect(answer).toMatchObject({ ok: false, error: { code: 'table/malformed' } });
    // the same thrown at the table with no wish for an answer
    room.send('command', message);
    expect(await room.request('command', { kind: 'takeSeat', seat: 'lead' })).toMatchObject({ ok: true });
    expect(left).toBe(0);
    await room.leave();
  });

  it('says where and what', async () => {
    const room = await openRoom();
    const answer: unknown = await room.request('command', { kind: 'setThrust', percent: '50' });
    expect(answer).toMatchObject({ error: { reason: expect.stringMatching(/did not understand.*percent.*number/) } });
    await room.leave();
  });

  it.each(['explode', '__proto__', 'constructor', 'toString', ''])(
    'by the type "%s" neither answers nor cuts the line',
    async (type) => {
      const room = await openRoom();
      let left = 0;
      room.onLeave(() => (left += 1));
      room.send(type, { any: 'thing' });
      await expect(room.request(type, { any: 'thing' })).rejects.toThrow('handler');
      expect(await room.request('command', { kind: 'takeSeat', seat: 'lead' })).toMatchObject({ ok: true });
      expect(left).toBe(0);
      await room.leave();
    },
  );
});

describe('too many messages', () => {
  it('are refused with the reason long before the line is cut, and then carried out again', async () => {
    const room = await openRoom();
    let left = 0;
    room.onLeave(() => (left += 1));
    const flood = COMMAND_RATE.burst + 20;
    const answers = await Promise.all(
      Array.from({ length: flood }, () =>
        room.request<unknown, { ok: boolean; error?: { code: string } }>('command', { kind: 'takeSeat', seat: 'lead' }),
      ),
    );
    const refused = answers.filter((answer) => !answer.ok);
    expect(answers.length - refused.length).toBeGreaterThanOrEqual(COMMAND_RATE.burst);
    expect(refused.length).toBeGreaterThan(5);
    expect(new Set(refused.map(({ error }) => error?.code))).toEqual(new Set(['table/too-fast']));
    await new Promise((resolve) => setTimeout(resolve, 200));
    expect(await room.request('command', { kind: 'takeSeat', seat: 'site' })).toMatchObject({ ok: true });
    expect(left).toBe(0);
    await room.leave();
  });

  it('past the hard limit cut the line, but not the place: a link of ours is back at once', async () => {
    const opened = await openSharedTable({ origin: server.origin, store: createTabStore(), name: 'Eve' });
    if (!opened.ok) throw new Error(opened.error.reason);
    const link = opened.value;
    await link.command({ kind: 'takeSeat', seat: 'lead' });
    const states: string[] = [];
    link.subscribe(() => states.push(link.state));
    await Promise.all(Array.from({ length: 400 }, () => link.command({ kind: 'takeSeat', seat: 'lead' })));
    await until('the line to be cut', () => states.includes('reconnecting'));
    await until('Eve to be back', () => link.state === 'connected');
    expect(link.view?.you.seat).toBe('lead');
    link.leave();
  });

  it('of one size too large cut the line', async () => {
    const room = await openRoom();
    room.reconnection.enabled = false;
    const code = await new Promise<number>((resolve) => {
      room.onLeave(resolve);
      room.send('command', { kind: 'x'.repeat(5000) });
    });
    expect(code).toBe(1009);
    expect(await isAlive()).toBe(true);
  });

  it('of bytes that mean nothing harm only the line that sent them', async () => {
    for (const bytes of [[0], [255, 255, 255], [13, 0xc1], [17, 1, 0xa7, 1, 2]]) {
      const room = await openRoom();
      room.reconnection.enabled = false;
      room.connection.send(new Uint8Array(bytes));
      await new Promise((resolve) => setTimeout(resolve, 20));
    }
    expect(await isAlive()).toBe(true);
    await (await openRoom()).leave();
  });
});

describe('a fault inside the table', () => {
  it('closes that table with the reason and no other, and is reported', async () => {
    const [faulty, other] = await Promise.all(
      ['Ada', 'Bo'].map(async (name) => {
        const opened = await openSharedTable({ origin: server.origin, store: createTabStore(), name });
        if (!opened.ok) throw new Error(opened.error.reason);
        return opened.value;
      }),
    );
    if (faulty === undefined || other === undefined) throw new Error('no tables');
    await faulty.command({ kind: 'takeSeat', seat: 'flying' });
    await other.command({ kind: 'takeSeat', seat: 'flying' });
    await other.command({ kind: 'begin' });
    await faulty.command({ kind: 'begin' });
    await faulty.command({ kind: 'setThrust', percent: 66 });
    await until('the table to close', () => faulty.state === 'closed');
    expect(faulty.closedBecause).toBe('The server closed this table.');
    expect(server.reports.filter((line) => line.includes('Fault in step: Error: the world broke'))).toHaveLength(1);
    const { tick } = other.view?.flight ?? { tick: 0 };
    await until('the other table to run on', () => (other.view?.flight.tick ?? 0) > tick);
    other.leave();
    expect(await isAlive()).toBe(true);
  });
});

describe('a handler that throws', () => {
  it('costs neither the process, nor the table, nor the line: the command is not carried out', async () => {
    const opened = await openSharedTable({ origin: server.origin, store: createTabStore(), name: 'Ada' });
    if (!opened.ok) throw new Error(opened.error.reason);
    const link = opened.value;
    repeatFails = true;
    await link.command({ kind: 'takeSeat', seat: 'flying' });
    await link.command({ kind: 'begin' });
    await link.command({ kind: 'setThrust', percent: 0 });
    await until('the end', () => link.view?.stage === 'resolved');
    expect(await link.command({ kind: 'again' })).toMatchObject({ ok: false, error: { code: 'table/no-answer' } });
    expect(server.reports.some((line) => line.includes('no second descent'))).toBe(true);
    repeatFails = false;
    hasFlown = false;
    expect(link.state).toBe('connected');
    expect(await link.command({ kind: 'again' })).toEqual({ ok: true });
    link.leave();
  });
});

describe('matchmaking', () => {
  it('refuses a large body before reading it', async () => {
    const large = await post('/matchmake/create/table', JSON.stringify({ name: 'x'.repeat(3_000_000) }));
    expect(large.status).toBe(413);
    expect(large.body).toContain(`at most ${LARGEST_BODY}`);
    const most = await post('/matchmake/create/table', JSON.stringify({ name: 'x'.repeat(LARGEST_BODY) }));
    expect(most.status).toBe(413);
  });

  it('refuses a body of unstated length, of another type, or in no JSON', async () => {
    const type = { 'content-type': 'application/json' };
    const chunked = await ask({
      method: 'POST',
      path: '/matchmake/create/table',
      headers: { ...type, 'transfer-encoding': 'chunked' },
      body: '{}',
    });
    expect(chunked.status).toBe(411);
    expect((await post('/matchmake/create/table', '{"name":"A"}', { 'content-type': 'text/plain' })).status).toBe(415);
    expect((await post('/matchmake/create/table', '{"name":')).status).toBe(400);
  });

  it.each([
    ['no name', '{}', 400],
    ['a name that is no text', '{"name":["A"]}', 400],
    ['more than is asked for', '{"name":"A","services":{}}', 400],
    ['a prototype', '{"name":"A","__proto__":{"resume":"x"}}', 400],
    ['null', 'null', 400],
    ['a list', '[]', 400],
  ])('refuses options with %s', async (_what, body, status) => {
    const answer = await post('/matchmake/create/table', body);
    expect(answer.status).toBe(status);
    expect(JSON.parse(answer.body)).toMatchObject({ error: expect.stringMatching(/./) });
  });

  it.each([
    '/matchmake/joinOrCreate/table',
    '/matchmake/joinById/BBBBBB',
    '/matchmake/reconnect/table',
    '/matchmake/constructor/table',
    '/matchmake/create/../table',
    '/matchmake/create/__proto__',
    '/anything',
  ])('takes no POST at %s', async (path) => {
    expect((await post(path, '{"name":"A"}')).status).toBe(404);
  });

  it('answers an unknown room and an unknown code with an error, and lives on', async () => {
    expect((await post('/matchmake/create/castle', '{"name":"A"}')).status).toBeGreaterThanOrEqual(400);
    expect((await post('/matchmake/join/table', '{"code":"BBBBBB","name":"A"}')).status).toBeGreaterThanOrEqual(400);
    expect((await post('/matchmake/create/constructor', '{"name":"A"}')).status).toBeGreaterThanOrEqual(400);
    expect(await isAlive()).toBe(true);
  });
});

describe('the front of the server', () => {
  it('sets the security headers on everything, allows no other origin and names no library', async () => {
    for (const path of ['/', '/api/health', '/nothing', '/__healthcheck']) {
      const { headers } = await ask({ path, headers: { origin: 'https://elsewhere.example' } });
      expect(headers['content-security-policy']).toContain("default-src 'none'");
      expect(headers['content-security-policy']).toContain("connect-src 'self'");
      expect(headers['x-content-type-options']).toBe('nosniff');
      expect(headers['access-control-allow-origin']).toBeUndefined();
      expect(headers['access-control-allow-credentials']).toBeUndefined();
      expect(headers['x-powered-by']).toBeUndefined();
    }
  });

  it.each(['OPTIONS', 'PUT', 'DELETE', 'PATCH'])('does not answer %s', async (method) => {
    const answer = await ask({
      method,
      path: '/matchmake/create/table',
      headers: { origin: 'https://elsewhere.example' },
    });
    expect(answer.status).toBe(405);
    expect(answer.headers['access-control-allow-origin']).toBeUndefined();
  });

  it.each(['/../package.json', '/..%2f..%2fpackage.json', '/%2e%2e/package.json', '/.git/config', '/index.html%00.js'])(
    'gives no file outside the client: %s',
    async (path) => {
      const answer = await ask({ path });
      expect(answer.status).toBeGreaterThanOrEqual(400);
      expect(answer.body).not.toContain('"dependencies"');
    },
  );

  it.each([
    'GET // HTTP/1.1\r\nHost: x\r\n\r\n',
    'GET http://[ HTTP/1.1\r\nHost: x\r\n\r\n',
    'GET /a HTTP/1.1\r\nHost: [::::\r\n\r\n',
    'POST /matchmake/create/table HTTP/1.1\r\nHost: a b\r\nContent-Type: application/json\r\nContent-Length: 2\r\n\r\n{}',
    'GET //: HTTP/1.1\r\nHost: x\r\nConnection: Upgrade\r\nUpgrade: websocket\r\nSec-WebSocket-Version: 13\r\nSec-WebSocket-Key: dGhlIHNhbXBsZSBub25jZQ==\r\n\r\n',
    'GET /a/b?sessionId=x HTTP/1.1\r\nHost: x\r\nConnection: Upgrade\r\nUpgrade: websocket\r\nSec-WebSocket-Version: 13\r\nSec-WebSocket-Key: dGhlIHNhbXBsZSBub25jZQ==\r\n\r\n',
    'nonsense\r\n\r\n',
  ])('survives the raw request %j', async (text) => {
    const socket = createConnection(server.port, '127.0.0.1');
    socket.on('error', () => undefined);
    socket.write(text);
    await new Promise((resolve) => {
      socket.on('close', resolve).on('data', () => undefined);
      setTimeout(resolve, 150);
    });
    socket.destroy();
    expect(await isAlive()).toBe(true);
  });
});
