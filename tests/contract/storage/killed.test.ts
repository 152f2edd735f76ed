import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterAll, expect, it } from 'vitest';
import { replayRecord } from '../../../engine/record/index.ts';
import { playedModel } from '../../../engine/table/index.ts';
import { firstLanding } from '../../../levels/index.ts';
import { openJournal } from '../../../server/storage/index.ts';
import { ROOT } from '../../support/sources.ts';

const root = mkdtempSync(path.join(tmpdir(), 'kilter-killed-'));
afterAll(() => rmSync(root, { recursive: true }));

const KILLS = 30;

interface Ended {
  readonly killed: boolean;
  readonly out: string;
}

/** Runs the table on this folder until it ends, or is killed: so many milliseconds after it began to step, or at once. */
async function run(
  folder: string,
  kill?: { readonly after: 'start' | 'stepping'; readonly ms: number },
): Promise<Ended> {
  const pace = kill === undefined ? '0' : '1';
  const child = spawn(process.execPath, ['tests/support/journaledTable.ts', folder, pace], {
    cwd: ROOT,
    stdio: ['ignore', 'pipe', 'inherit'],
  });
  const killSoon = () => setTimeout(() => child.kill('SIGKILL'), kill?.ms);
  if (kill?.after === 'start') killSoon();
  let out = '';
  child.stdout.on('data', (chunk: Buffer) => {
    if (out === '' && kill?.after === 'stepping') killSoon();
    out += chunk.toString();
  });
  const [, signal] = (await once(child, 'exit')) as [number | null, string | null];
  return { killed: signal === 'SIGKILL', out };
}

/** What the table said last. */
function end(text: string): { readonly hash: string; readonly descents: number } {
  return JSON.parse(text.trim().split('\n').at(-1) ?? '') as { hash: string; descents: number };
}

it('a table whose process is killed 30 times at any moment ends as the undisturbed one, to the hash', async () => {
  const disturbed = path.join(root, 'disturbed');
  let kills = 0;
  let reached = 0;
  for (let i = 0; i < KILLS; i += 1) {
    // most in mid-descent, some about where the journal is opened; each spread evenly by the golden ratio
    const isAtStart = i % 5 === 4;
    const share = ((isAtStart ? (i - 4) / 5 : i) * 0.618034) % 1;
    const { killed } = await run(
      disturbed,
      isAtStart ? { after: 'start', ms: 400 * share } : { after: 'stepping', ms: 250 * share },
    );
    if (killed) kills += 1;
  }
  const journal = openJournal({ folder: disturbed, report: (line) => expect.fail(line) });
  reached = journal.unfinished()[0]?.record?.lines.at(-1)?.tick ?? 0;
  journal.close();
  expect(kills).toBeGreaterThan(0.8 * KILLS);
  expect(reached).toBeGreaterThan(600);

  const [after, undisturbed] = [await run(disturbed), await run(path.join(root, 'undisturbed'))];
  expect(end(after.out).hash).toMatch(/^[0-9a-f]{16}$/);
  expect(end(after.out).hash).toBe(end(undisturbed.out).hash);
  expect(end(after.out).descents).toBe(2);

  // and the two records are the same, line by line, and replay
  const records = ['disturbed', 'undisturbed'].map((name) => {
    const kept = openJournal({ folder: path.join(root, name), report: (line) => expect.fail(line) });
    const [table] = kept.unfinished();
    kept.close();
    return table?.record;
  });
  expect(records[0]?.lines.length).toBeGreaterThan(200);
  expect(records[0]).toEqual(records[1]);
  if (records[0] === undefined) throw new Error('no record');
  const replayed = replayRecord(records[0], { plan: firstLanding(3), model: playedModel });
  expect(replayed.ok && replayed.value.divergence).toBe(undefined);
}, 300_000);
