import { createServer } from 'node:net';
import { afterEach, describe, expect, it } from 'vitest';
import { openSharedTable } from '../../../client/net/index.ts';
import { addressOf, endProcesses, startProcess } from '../../support/serverProcess.ts';
import { createTabStore, until } from '../../support/tableServer.ts';

afterEach(endProcesses);

describe('the server process', () => {
  it('says where the table is set in one line, serves it, and ends cleanly on SIGTERM with a crew at the table', async () => {
    const run = startProcess({ PORT: '0', HOST: '127.0.0.1' });
    const origin = await addressOf(run);
    expect(run.lines.out).toEqual([`Kilter's table is set at ${origin}`]);
    const health: unknown = await (await fetch(`${origin}/api/health`)).json();
    expect(health).toEqual({ ok: true, tables: 0 });
    const opened = await openSharedTable({ origin, store: createTabStore(), name: 'Ada' });
    if (!opened.ok) throw new Error(opened.error.reason);
    const link = opened.value;
    expect(link.view?.plan).toMatchObject({ landerId: 'trivet', siteId: 'saddlers-bench', worldId: 'moon' });
    await link.command({ kind: 'takeSeat', seat: 'flying' });
    await link.command({ kind: 'begin' });
    await until('the descent to run', () => (link.view?.flight.tick ?? 0) > 10);
    run.child.kill('SIGTERM');
    expect(await run.ended).toBe(0);
    expect(run.lines.err.filter((line) => line.includes('Fault'))).toEqual([]);
    await until('the link to notice', () => link.state === 'reconnecting');
    link.leave();
  });

  it('names a port that another program uses, and ends', async () => {
    const other = createServer();
    await new Promise<void>((resolve) => other.listen(0, '127.0.0.1', resolve));
    const used = other.address();
    const port = typeof used === 'object' && used !== null ? used.port : 0;
    const run = startProcess({ PORT: String(port), HOST: '127.0.0.1' });
    expect(await run.ended).toBe(1);
    expect(run.lines.out).toEqual([]);
    expect(run.lines.err.at(-1)).toContain(`Another program uses port ${port} of 127.0.0.1.`);
    expect(run.lines.err.join('\n')).not.toMatch(/EADDRINUSE|at Server/);
    other.close();
  });

  it.each([
    ['PORT', 'abc', 'PORT: expected a whole number from 0 to 65535, got "abc"'],
    ['KILTER_MOST_TABLES', '-3', 'KILTER_MOST_TABLES: expected a whole number from 1 to 1000, got "-3"'],
  ])('refuses %s=%s in one line and ends with 2', async (name, value, line) => {
    const run = startProcess({ [name]: value });
    expect(await run.ended).toBe(2);
    expect(run.lines).toEqual({ out: [], err: [line] });
  });

  it('says in one line that HOST is no address of this machine', async () => {
    const run = startProcess({ PORT: '0', HOST: '192.0.2.1' });
    expect(await run.ended).toBe(1);
    expect(run.lines.err.at(-1)).toBe('HOST: expected an address of this machine, got "192.0.2.1"');
  });
});
