import { connect } from 'node:net';
import { afterEach, describe, expect, it } from 'vitest';
import { openSharedTable } from '../../../client/net/index.ts';
import { addressOf, endProcesses, startProcess } from '../../support/serverProcess.ts';
import { createTabStore } from '../../support/tableServer.ts';

afterEach(endProcesses);

/** A line with a message that is too long: the server has something to say about each. */
function strangeLine(origin: string): Promise<void> {
  return new Promise((resolve) => {
    const socket = new WebSocket(`${origin.replace('http', 'ws')}/`);
    socket.addEventListener('open', () => socket.send(new Uint8Array(5000)));
    socket.addEventListener('close', () => resolve());
  });
}

/** A body that breaks off: what reads it has something to say. */
function brokenBody(origin: string): Promise<void> {
  const { hostname, port } = new URL(origin);
  return new Promise((resolve) => {
    const socket = connect(Number(port), hostname, () => {
      const head = [
        'POST /matchmake/create/table HTTP/1.1',
        `Host: ${hostname}:${port}`,
        'Content-Type: application/json',
      ];
      socket.write([...head, 'Content-Length: 1000', '', '{'].join('\r\n'), () =>
        setTimeout(() => socket.destroy(), 50),
      );
    });
    socket.on('close', () => resolve());
  });
}

/** What answers an upgrade at a path. */
async function statusOfUpgrade(origin: string, at: string): Promise<string> {
  const { hostname, port } = new URL(origin);
  return new Promise((resolve) => {
    const socket = connect(Number(port), hostname, () => {
      const head = [`GET ${at} HTTP/1.1`, `Host: ${hostname}:${port}`, 'Connection: Upgrade', 'Upgrade: websocket'];
      const key = ['Sec-WebSocket-Version: 13', 'Sec-WebSocket-Key: dGhlIHNhbXBsZSBub25jZQ=='];
      socket.write([...head, ...key, '', ''].join('\r\n'));
    });
    socket.on('data', (data: Buffer) => {
      socket.destroy();
      resolve(data.toString().split(' ')[1] ?? '');
    });
  });
}

describe('a log', () => {
  it('takes what a library says of broken bodies in lines of its own, and few of them', async () => {
    const run = startProcess({});
    const origin = await addressOf(run);
    for (let i = 0; i < 6; i += 1) await Promise.all(Array.from({ length: 10 }, () => brokenBody(origin)));
    // no name that every object has is looked up as a room
    expect(await statusOfUpgrade(origin, '/table/__proto__')).toBe('404');
    expect(await statusOfUpgrade(origin, '/constructor/x')).toBe('404');
    expect(await statusOfUpgrade(origin, '/table/x')).toBe('101');
    run.child.kill('SIGTERM');
    expect(await run.ended).toBe(0);
    const written = run.lines.err.map((line) => JSON.parse(line) as { kind: string; msg: string });
    const ofBodies = written.filter(({ msg }) => msg.includes('aborted'));
    expect(ofBodies.length).toBeGreaterThan(0);
    expect(written.length).toBeLessThan(30);
    expect(written.some(({ msg }) => msg.includes('hasReservedSeat'))).toBe(false);
  });

  it('that nobody reads any more neither stops the server nor keeps it from ending', async () => {
    const run = startProcess({});
    const origin = await addressOf(run);
    run.child.stderr.destroy();
    run.child.stdout.destroy();
    for (let i = 0; i < 10; i += 1) await strangeLine(origin);
    const opened = await openSharedTable({ origin, store: createTabStore(), name: 'Ada' });
    if (!opened.ok) throw new Error(opened.error.reason);
    expect(await opened.value.command({ kind: 'takeSeat', seat: 'lead' })).toEqual({ ok: true });
    run.child.kill('SIGTERM');
    expect(await run.ended).toBe(0);
    opened.value.leave();
  });

  it('takes few lines of one kind, however many strangers set off, each with its time and none with a name', async () => {
    const run = startProcess({});
    const origin = await addressOf(run);
    const opened = await openSharedTable({ origin, store: createTabStore(), name: 'Marigold' });
    if (!opened.ok) throw new Error(opened.error.reason);
    const code = (opened.value.code ?? '').replaceAll(' ', '');
    for (let i = 0; i < 60; i += 1) await strangeLine(origin);
    run.child.kill('SIGTERM');
    expect(await run.ended).toBe(0);
    const written = run.lines.err.map((line) => JSON.parse(line) as { kind: string; time: string; level: string });
    const ofLibrary = written.filter(({ kind }) => kind === 'library');
    expect(ofLibrary.length).toBeGreaterThan(0);
    expect(ofLibrary.length).toBeLessThanOrEqual(22);
    for (const { time, level } of written) expect([level, Date.parse(time) > 0]).toEqual([level, true]);
    expect(run.lines.err.join('\n')).not.toMatch(new RegExp(`Marigold|${code}|127\\.0\\.0\\.1`));
    opened.value.leave();
  });
});

describe('a fault that nobody foresaw', () => {
  it('is told, and ends the process with status 1', async () => {
    const fault = 'setTimeout(() => { throw new Error("unforeseen"); }, 2500)';
    const run = startProcess({}, ['--import', `data:text/javascript,${fault}`]);
    await addressOf(run);
    expect(await run.ended).toBe(1);
    expect(run.lines.err.filter((line) => line.includes('unforeseen'))).toHaveLength(1);
  });
});
