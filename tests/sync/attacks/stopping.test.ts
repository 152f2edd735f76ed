import { spawn } from 'node:child_process';
import { Client, type Room } from '@colyseus/sdk';
import { afterEach, describe, expect, it } from 'vitest';
import { openSharedTable } from '../../../client/net/index.ts';
import { CLOSE_CODES } from '../../../server/messages/index.ts';
import { addressOf, endProcesses, startProcess } from '../../support/serverProcess.ts';
import { ROOT } from '../../support/sources.ts';
import { createTabStore, startTestServer, until } from '../../support/tableServer.ts';

afterEach(endProcesses);

/** Longest that a server may take from the signal to its end [ms]. */
const GONE_MS = 5000;

describe('a server that is told to end', () => {
  it('is gone in time though a place is reserved that nobody takes, and somebody does not say goodbye', async () => {
    const run = startProcess({});
    const origin = await addressOf(run);
    const opened = await openSharedTable({ origin, store: createTabStore(), name: 'Ada' });
    if (!opened.ok) throw new Error(opened.error.reason);
    const code = (opened.value.code ?? '').replaceAll(' ', '');
    const reserved = await fetch(`${origin}/matchmake/join/table`, {
      method: 'POST',
      headers: { 'content-type': 'application/json' },
      body: JSON.stringify({ code, name: 'Never' }),
    });
    expect(reserved.status).toBe(200);
    const startMs = performance.now();
    run.child.kill('SIGTERM');
    expect(await run.ended).toBe(0);
    expect(performance.now() - startMs).toBeLessThan(GONE_MS);
    await until('the member to know', () => opened.value.state === 'reconnecting');
    opened.value.leave();
  });

  it('says that it is not ready, and opens no table, while it takes its leave', async () => {
    const server = await startTestServer();
    const room: Room = await new Client(server.origin).create('table', { name: 'Ada' });
    room.onMessage('*', () => undefined);
    room.reconnection.enabled = false;
    const left = new Promise<number>((resolve) => room.onLeave(resolve));
    server.drain();
    const health = await fetch(`${server.origin}/api/health`);
    expect([health.status, await health.json()]).toEqual([
      503,
      { ok: false, tables: 1, because: 'This server is being restarted.' },
    ]);
    const late = await openSharedTable({ origin: server.origin, store: createTabStore(), name: 'Bo' });
    expect(late.ok ? '' : late.error.reason).toContain('being restarted');
    expect(await room.request('command', { kind: 'takeSeat', seat: 'lead' })).toEqual({ ok: true });
    await server.close();
    expect(await left).toBe(CLOSE_CODES.restarting);
  });

  it('through the script that npm starts it with, also when the shell between them ends without a word', async () => {
    const shell = spawn('sh', ['-c', 'node .setup/run.mjs start; true'], {
      cwd: ROOT,
      env: { PATH: process.env['PATH'] ?? '', PORT: '0', HOST: '127.0.0.1', KILTER_RECORDS: 'none' },
      stdio: ['ignore', 'pipe', 'ignore'],
    });
    let said = '';
    shell.stdout.on('data', (chunk: Buffer) => (said += chunk.toString()));
    await until('the address', () => said.includes('table is set at'), 60_000);
    const origin = /http:\/\/\S+/.exec(said)?.[0] ?? '';
    expect((await fetch(`${origin}/api/health`)).status).toBe(200);
    shell.kill('SIGTERM');
    const goneMs = await timeUntilGone(origin);
    expect(goneMs).toBeLessThan(GONE_MS);
  });
});

/** How long it is still answered there [ms]. */
async function timeUntilGone(origin: string): Promise<number> {
  const startMs = performance.now();
  for (;;) {
    const answer = await fetch(`${origin}/api/health`).catch(() => undefined);
    const tookMs = performance.now() - startMs;
    if (answer === undefined || tookMs > 2 * GONE_MS) return tookMs;
  }
}
