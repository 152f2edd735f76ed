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

describe('a log', () => {
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
