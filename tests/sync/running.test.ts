import { execFile, execFileSync } from 'node:child_process';
import { existsSync, mkdtempSync, rmSync, symlinkSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { promisify } from 'node:util';
import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest';
import { openSharedTable, resumeSharedTable } from '../../client/net/index.ts';
import { settingsText } from '../../server/settings.ts';
import { addressOf, endProcesses, startProcess } from '../support/serverProcess.ts';
import { readSource, ROOT } from '../support/sources.ts';
import { createTabStore } from '../support/tableServer.ts';

const run = promisify(execFile);
const dockerfile = readSource('server/deploy/Dockerfile');
const lastStage = dockerfile.slice(dockerfile.lastIndexOf('\nFROM '));

let folder: string;

beforeAll(() => {
  folder = mkdtempSync(path.join(tmpdir(), 'kilter-running-'));
});
afterEach(endProcesses);
afterAll(() => rmSync(folder, { recursive: true, force: true }));

/** The words of a command of the last stage. */
function wordsOf(line: RegExp): readonly unknown[] {
  const words: unknown = JSON.parse(line.exec(lastStage)?.[1] ?? '[]');
  return Array.isArray(words) ? words : [];
}

describe('the image', () => {
  it('copies what is there, and is neither root nor without a health check', () => {
    const copied = [...dockerfile.matchAll(/^COPY (?!--from)(.+) \S+$/gm)].flatMap((line) =>
      (line[1] ?? '').split(' '),
    );
    expect(copied.length).toBeGreaterThan(8);
    expect(copied.filter((name) => !existsSync(path.join(ROOT, name)))).toEqual([]);
    expect(lastStage).toMatch(/^USER kilter$/m);
    expect(lastStage).not.toMatch(/npm|vite/);
  });

  it('holds all that the server needs, which its health check finds well, and whose copy of the records brings tables back', async () => {
    const image = path.join(folder, 'image');
    const names = [...lastStage.matchAll(/^COPY (?:--from=\w+ \/kilter\/)?(\S+) \S+$/gm)].map((line) => line[1] ?? '');
    execFileSync('mkdir', ['-p', image]);
    for (const name of names) symlinkSync(path.join(ROOT, name), path.join(image, name));
    const records = path.join(folder, 'records');
    expect(wordsOf(/^CMD (.*)$/m)).toEqual(['node', 'server/main.ts']);
    const first = startProcess(
      { KILTER_RECORDS: records, NODE_ENV: 'production' },
      ['--preserve-symlinks', '--preserve-symlinks-main'],
      image,
    );
    const origin = await addressOf(first);
    const [, ...check] = wordsOf(/^HEALTHCHECK[^[]*(\[.*\])$/m).map(String);
    const healthy = run(process.execPath, check, { env: { PORT: new URL(origin).port } });
    await expect(healthy).resolves.toBeDefined();
    await expect(run(process.execPath, check, { env: { PORT: '1' } })).rejects.toThrow('Command failed');

    const store = createTabStore();
    const opened = await openSharedTable({ origin, store, name: 'Ada' });
    if (!opened.ok) throw new Error(opened.error.reason);
    await opened.value.command({ kind: 'takeSeat', seat: 'lead' });
    const metrics = await (await fetch(`${origin}/api/metrics`)).text();
    expect(metrics).toMatch(/^# TYPE kilter_tables gauge\nkilter_tables 1$/m);
    const told = await fetch(`${origin}/api/metrics`, { headers: { 'x-forwarded-for': '198.51.100.1' } });
    expect(told.status).toBe(404);

    // the command of the page
    const [command = ''] = /node --input-type=module -e ".*"/.exec(readSource('server/RUNNING.md')) ?? [];
    const [, script = ''] = /-e "(.*)"/.exec(command) ?? [];
    const copy = path.join(folder, 'kilter-backup.sqlite');
    const there = script
      .replace('.records/kilter.sqlite', path.join(records, 'kilter.sqlite'))
      .replace('kilter-backup.sqlite', copy);
    await run(process.execPath, ['--input-type=module', '-e', there]);
    const kept = store.load();
    opened.value.leave();
    first.child.kill('SIGTERM');
    expect(await first.ended).toBe(0);

    const restored = path.join(folder, 'restored');
    execFileSync('mkdir', ['-p', restored]);
    execFileSync('cp', [copy, path.join(restored, 'kilter.sqlite')]);
    const second = startProcess({ KILTER_RECORDS: restored });
    const again = await resumeSharedTable({ origin: await addressOf(second), store: { ...store, load: () => kept } });
    expect(again?.ok === true && again.value.view?.you.seat).toBe('lead');
  });
});

it('--help lists the settings, and starts nothing', async () => {
  const { stdout } = await run(process.execPath, ['server/main.ts', '--help'], { cwd: ROOT });
  expect(stdout).toBe(settingsText());
});
