import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { startTestServer, type TestServer } from '../../support/tableServer.ts';

let server: TestServer;

beforeAll(async () => {
  server = await startTestServer();
});
afterAll(() => server.close());

interface Reservation {
  readonly roomId: string;
  readonly sessionId: string;
  readonly processId: string;
}

async function reserve(): Promise<Reservation> {
  const answer = await fetch(`${server.origin}/matchmake/create/table`, {
    method: 'POST',
    headers: { 'content-type': 'application/json' },
    body: JSON.stringify({ name: 'Eve' }),
  });
  return (await answer.json()) as Reservation;
}

/** Opens a line and leaves it at that; resolves with the code that it is closed with. */
function silent(path: string): Promise<number> {
  return new Promise((resolve) => {
    const socket = new WebSocket(`${server.origin.replace('http', 'ws')}${path}`);
    // what keeps a line alive that joins nothing
    const trying = setInterval(() => socket.readyState === WebSocket.OPEN && socket.send(new Uint8Array([18])), 500);
    socket.addEventListener('close', ({ code }) => {
      clearInterval(trying);
      resolve(code);
    });
  });
}

describe('a line for which a place is reserved', () => {
  it('that never joins is ended, and so is one that came for nothing, however lively', async () => {
    const { processId, roomId, sessionId } = await reserve();
    const codes = await Promise.all([silent(`/${processId}/${roomId}?sessionId=${sessionId}`), silent('/')]);
    expect(codes).toEqual([1008, 1000]);
  });
});
