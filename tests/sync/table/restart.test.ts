import { spawn, type ChildProcess } from 'node:child_process';
import { once } from 'node:events';
import { mkdtempSync, rmSync } from 'node:fs';
import { createServer, type AddressInfo } from 'node:net';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterAll, afterEach, describe, expect, it } from 'vitest';
import { joinSharedTable } from '../../../client/net/index.ts';
import { ROOT } from '../../support/sources.ts';
import { createTabStore, enterTable, until } from '../../support/tableServer.ts';

const root = mkdtempSync(path.join(tmpdir(), 'kilter-restart-'));
afterAll(() => rmSync(root, { recursive: true }));

let child: ChildProcess | undefined;
afterEach(() => void child?.kill('SIGKILL'));

async function freePort(): Promise<number> {
  const server = createServer().listen(0, '127.0.0.1');
  await once(server, 'listening');
  const { port } = server.address() as AddressInfo;
  server.close();
  return port;
}

/** The server as a user starts it; its records are in `folder`. Resolves once it answers, with what it said on the error output. */
async function start(port: number, folder: string): Promise<string[]> {
  const said: string[] = [];
  child = spawn(process.execPath, ['server/main.ts'], {
    cwd: ROOT,
    env: {
      PATH: process.env['PATH'] ?? '',
      PORT: String(port),
      HOST: '127.0.0.1',
      KILTER_RECORDS: path.join(root, folder),
    },
    stdio: ['ignore', 'pipe', 'pipe'],
  });
  child.stderr?.on('data', (chunk: Buffer) => said.push(chunk.toString()));
  if (child.stdout !== null) await once(child.stdout, 'data');
  return said;
}

async function stop(signal: 'SIGKILL' | 'SIGTERM'): Promise<void> {
  const stopped = child;
  if (stopped === undefined) return;
  const ended = once(stopped, 'exit');
  stopped.kill(signal);
  await ended;
}

/** The answer of the server that runs now: a connection that was kept open may still lead to the one before. */
async function joinAtLast(origin: string, code: string): Promise<string> {
  for (;;) {
    const joined = await joinSharedTable({ origin, name: 'Cy', store: createTabStore(), code });
    if (joined.ok) return 'joined';
    if (joined.error.code !== 'table/no-server') return joined.error.code;
    await new Promise((resolve) => setTimeout(resolve, 100));
  }
}

describe.each(['SIGKILL', 'SIGTERM'] as const)(
  'a server that ends by %s in mid-descent and is started again',
  (signal) => {
    it('has its table again where it was, and everybody back in their seats by themselves', async () => {
      const port = await freePort();
      const origin = `http://127.0.0.1:${port}`;
      await start(port, signal);
      const ada = await enterTable(origin, 'Ada');
      const bo = await enterTable(origin, 'Bo', ada.code);
      for (const [link, command] of [
        [ada, { kind: 'takeSeat', seat: 'flying' }],
        [bo, { kind: 'takeSeat', seat: 'propellant' }],
        [ada, { kind: 'begin' }],
        [bo, { kind: 'setCeiling', percent: 37 }],
        [ada, { kind: 'setTilt', degrees: 3 }],
      ] as const)
        expect(await link.command(command)).toEqual({ ok: true, value: undefined });
      await until('a second of descent', () => (ada.view?.flight.tick ?? 0) > 60);

      await stop(signal);
      const before = ada.view?.flight;
      await until('both lines to be down', () => [ada, bo].every(({ state }) => state === 'reconnecting'));
      // whoever reads it is told what the server said of itself
      expect(ada.isRestarting).toBe(signal === 'SIGTERM');
      const said = await start(port, signal);
      await until('both back', () => [ada, bo].every(({ state }) => state === 'connected'), 20_000);
      // a busy machine may drop ticks, and says so
      expect(said.filter((line) => !/too slow or too busy|"kind":"stop"/.test(line))).toEqual([]);
      expect(ada.isRestarting).toBe(signal === 'SIGTERM');
      expect(ada.view).toMatchObject({ stage: 'descending', you: { seat: 'flying', name: 'Ada' } });
      expect(bo.view).toMatchObject({
        you: { seat: 'propellant' },
        engine: { ceilingPercent: 37 },
        commanded: { tiltDeg: 3 },
      });

      // the descent stands where it was: at most half a second before what was seen last, and never anew
      const back = ada.view?.flight.tick ?? 0;
      expect(back).toBeGreaterThan((before?.tick ?? 0) - 31);
      expect(ada.view?.held).toBe(true);
      expect((await ada.command({ kind: 'resume' })).ok).toBe(true);
      await until('it goes on', () => (ada.view?.flight.tick ?? 0) > (before?.tick ?? Infinity));
      expect((await bo.command({ kind: 'setCeiling', percent: 41 })).ok).toBe(true);
      for (const link of [ada, bo]) link.leave();
      await stop('SIGTERM');

      // everybody has left: nothing to take up any more
      await start(port, signal);
      expect(await joinAtLast(origin, ada.code ?? '')).toBe('table/no-table');
    });
  },
);
