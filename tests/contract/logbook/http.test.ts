import { mkdtempSync, readFileSync, readdirSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterEach, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { parseRecord, replayRecord, type TableRecord } from '../../../engine/record/index.ts';
import { playedModel } from '../../../engine/table/index.ts';
import { RUNS_RATE } from '../../../server/http/index.ts';
import type { RunList } from '../../../server/logbook/index.ts';
import { flyShelved, PLAYED_PARTS, SHELVED_PLAN, shelveRun } from '../../support/shelvedRun.ts';
import { startTestServer, type TestServer } from '../../support/tableServer.ts';

const KEY = 'key-of-the-first-run-';
const OTHER_KEY = 'key-of-another-run---';
const ADMINISTRATOR = 'administrator-of-this-server';

let record: TableRecord;
let folder: string;
let server: TestServer;

beforeAll(() => {
  record = flyShelved();
});

beforeEach(async () => {
  folder = mkdtempSync(path.join(tmpdir(), 'kilter-logbook-'));
  shelveRun(folder, { record, code: 'HKTVRQ', key: KEY });
  shelveRun(folder, { record, code: 'BCDFGH', key: OTHER_KEY });
  // of before runs had keys
  shelveRun(folder, { record, code: 'JKLMNP' });
  server = await startTestServer(PLAYED_PARTS, { KILTER_RECORDS: folder, KILTER_ADMIN_KEY: ADMINISTRATOR });
});

afterEach(async ({ task }) => {
  await server.close();
  if (server.reports.length > 0) throw new Error(`${task.name}: ${server.reports.join('; ')}`);
  rmSync(folder, { recursive: true, force: true });
});

interface Asked {
  readonly keys?: string;
  readonly administrator?: string;
  readonly body?: object;
}

async function ask(where: string, { keys, administrator, body }: Asked = {}) {
  const answer = await fetch(`${server.origin}/api/runs${where}`, {
    method: body === undefined ? 'GET' : 'POST',
    headers: {
      ...(body && { 'Content-Type': 'application/json' }),
      ...(keys !== undefined && { 'Kilter-Keys': keys }),
      ...(administrator !== undefined && { 'Kilter-Administrator': administrator }),
    },
    ...(body && { body: JSON.stringify(body) }),
  });
  return { status: answer.status, body: (await answer.json()) as Record<string, unknown> };
}

async function list(asked: Asked): Promise<RunList> {
  const { status, body } = await ask('', asked);
  expect(status).toBe(200);
  return body as unknown as RunList;
}

/** When nothing in the list is being worked out any more: however late on a busy machine, within the time of the test. */
async function settledList(asked: Asked): Promise<RunList> {
  const listed = await list(asked);
  if (listed.runs.every(({ isPending }) => !isPending)) return listed;
  await new Promise((resolve) => setTimeout(resolve, 700));
  return settledList(asked);
}

async function idOf(keys: string): Promise<string> {
  const [run] = (await list({ keys })).runs;
  if (run === undefined) throw new Error('no run');
  return run.id;
}

/** Whether these words stand in any file of the folder. */
function inFiles(...words: readonly string[]): readonly string[] {
  const bytes = readdirSync(folder).map((file) => readFileSync(path.join(folder, file)));
  return words.filter((word) => bytes.some((one) => one.includes(word)));
}

describe('the logbook of a server', () => {
  it('lists the runs of the keys that it is shown and no other, with who flew and how it ended', async () => {
    expect((await list({})).runs).toEqual([]);
    const { runs, isAdministrator, unknownKeys } = await settledList({ keys: `${KEY}, no-such-key` });
    expect([isAdministrator, unknownKeys]).toEqual([false, ['no-such-key']]);
    expect(runs).toHaveLength(1);
    expect(runs[0]).toMatchObject({
      code: 'HKTVRQ',
      choice: SHELVED_PLAN.choice,
      isKept: false,
      isOpen: false,
      summary: {
        descents: 1,
        people: [{ member: 'm1', name: 'Ada', role: 'crew' }],
        crew: [{ seat: 'lead', name: 'Ada' }],
      },
    });
    expect(JSON.stringify(runs)).not.toContain(KEY);
    // thirty days are usual
    expect((runs[0]?.expiresMs ?? 0) - Date.now()).toBeGreaterThan(29 * 24 * 3600 * 1000);
  });

  it('lists all runs to the administrator, and refuses a wrong key in words', async () => {
    const { runs, isAdministrator } = await list({ administrator: ADMINISTRATOR });
    expect(isAdministrator).toBe(true);
    expect(runs.map(({ code }) => code).toSorted()).toEqual(['BCDFGH', 'HKTVRQ', 'JKLMNP']);
    const wrong = await ask('', { administrator: `${ADMINISTRATOR}!` });
    expect(wrong).toEqual({
      status: 403,
      body: { code: 403, error: 'That is not the administrator’s key of this server.' },
    });
  });

  it('gives a record out whole to its key, and to another key not even that it is there', async () => {
    const id = await idOf(KEY);
    const given = await ask(`/${id}`, { keys: KEY });
    const parsed = parseRecord(String(given.body['text']));
    expect(parsed.ok && parsed.value).toEqual(record);
    const refused = { status: 404, body: { code: 404, error: 'No run here opens with that key.' } };
    for (const keys of [OTHER_KEY, '', 'x']) expect(await ask(`/${id}`, { keys })).toEqual(refused);
    expect(await ask('/aaaaaaaaaaaa', { keys: KEY })).toEqual(refused);
    for (const [what, body] of [
      ['keep', { isKept: true }],
      ['delete', {}],
      ['forget', { name: 'Ada' }],
      ['plan', { command: { kind: 'setGoal', text: 'Look twice.' } }],
    ] as const)
      expect(await ask(`/${id}/${what}`, { keys: OTHER_KEY, body })).toEqual(refused);
  });

  it('keeps a run from expiring, and lets it again', async () => {
    const id = await idOf(KEY);
    expect((await ask(`/${id}/keep`, { keys: KEY, body: { isKept: true } })).status).toBe(200);
    const [kept] = (await list({ keys: KEY })).runs;
    expect([kept?.isKept, kept?.expiresMs]).toEqual([true, undefined]);
    await ask(`/${id}/keep`, { keys: KEY, body: { isKept: false } });
    expect((await list({ keys: KEY })).runs[0]?.isKept).toBe(false);
  });

  it('deletes a run so that no byte of its names is left in any file', async () => {
    expect(inFiles('Ada', 'ADA here')).toEqual(['Ada', 'ADA here']);
    for (const keys of [KEY, OTHER_KEY])
      expect((await ask(`/${await idOf(keys)}/delete`, { keys, body: {} })).status).toBe(200);
    const [last] = (await settledList({ administrator: ADMINISTRATOR })).runs;
    await ask(`/${last?.id}/delete`, { administrator: ADMINISTRATOR, body: {} });
    expect((await list({ administrator: ADMINISTRATOR })).runs).toEqual([]);
    expect(inFiles('Ada', 'ADA here', KEY, OTHER_KEY)).toEqual([]);
  });

  it('forgets a name throughout one run, which still replays to the bit, and no byte of the name is left', async () => {
    await ask(`/${await idOf(OTHER_KEY)}/delete`, { keys: OTHER_KEY, body: {} });
    const [bare] = (await settledList({ administrator: ADMINISTRATOR })).runs.filter(({ code }) => code === 'JKLMNP');
    await ask(`/${bare?.id}/delete`, { administrator: ADMINISTRATOR, body: {} });
    const id = await idOf(KEY);
    expect(await ask(`/${id}/forget`, { keys: KEY, body: { name: 'Bo' } })).toEqual({
      status: 409,
      body: { code: 409, error: 'Nobody in this run has the name Bo.' },
    });
    expect((await ask(`/${id}/forget`, { keys: KEY, body: { name: 'Ada' } })).status).toBe(200);
    const text = String((await ask(`/${id}`, { keys: KEY })).body['text']);
    expect(text).toContain('Person 1 here: what does Adam see?');
    const parsed = parseRecord(text);
    if (!parsed.ok) throw new Error(JSON.stringify(parsed.error));
    const replayed = replayRecord(parsed.value, { plan: SHELVED_PLAN, model: playedModel });
    expect(replayed.ok && replayed.value.divergence).toBe(undefined);
    expect((await list({ keys: KEY })).runs[0]?.summary?.crew).toEqual([{ seat: 'lead', name: 'Person 1' }]);
    expect(inFiles('"Ada"', 'ADA here')).toEqual([]);
    expect(inFiles('Person 1 here')).toEqual(['Person 1 here']);
  });

  it('goes on with the plan of improvement of a run that is over, and refuses anything else', async () => {
    const id = await idOf(KEY);
    const plan = (command: object) => ask(`/${id}/plan`, { keys: KEY, body: { command } });
    const action = { text: 'Say the height first.', owner: 'Ada', due: 'next run', state: 'open', isRule: false };
    expect((await plan({ kind: 'setAction', ...action })).status).toBe(200);
    expect((await plan({ kind: 'setGoal', text: 'Doubt sooner.' })).status).toBe(200);
    expect((await plan({ kind: 'dropAction', id: 7 })).body['error']).toBe('That action is not on the plan any more.');
    expect((await plan({ kind: 'begin' })).status).toBe(400);
    expect((await plan({ kind: 'setAction' })).status).toBe(400);
    const parsed = parseRecord(String((await ask(`/${id}`, { keys: KEY })).body['text']));
    if (!parsed.ok) throw new Error(JSON.stringify(parsed.error));
    const replayed = replayRecord(parsed.value, { plan: SHELVED_PLAN, model: playedModel });
    if (!replayed.ok) throw new Error(replayed.error.code);
    expect(replayed.value.divergence).toBe(undefined);
    const { review } = replayed.value.table.state;
    expect([review.goal, review.actions]).toEqual(['Doubt sooner.', [{ id: 1, ...action }]]);
    expect((await list({ keys: KEY })).runs[0]?.summary?.actions).toBe(1);
  });

  it('tells whoever guesses to wait', async () => {
    const answers = [];
    for (let i = 0; i < RUNS_RATE.burst + 5; i += 1)
      answers.push((await ask('', { administrator: `a guess with number ${i}` })).status);
    expect(answers[0]).toBe(403);
    expect(answers.at(-1)).toBe(429);
    // who joins a table is not held up by that
    expect((await fetch(`${server.origin}/matchmake/join/table`, post({ code: 'BBBBBB', name: '' }))).status).not.toBe(
      429,
    );
  });

  it('takes no change from elsewhere than a page of ours, no key from an address, and no foreign shape', async () => {
    const id = await idOf(KEY);
    const form = await fetch(`${server.origin}/api/runs/${id}/delete`, {
      method: 'POST',
      headers: { 'Content-Type': 'text/plain', 'Kilter-Keys': KEY },
      body: '{}',
    });
    expect(form.status).toBe(415);
    expect((await ask(`/${id}?Kilter-Keys=${KEY}`)).status).toBe(404);
    expect((await ask(`/${id}/burn`, { keys: KEY, body: {} })).status).toBe(404);
    for (const body of [{ isKept: 'yes' }, { isKept: true, more: 1 }, {}])
      expect((await ask(`/${id}/keep`, { keys: KEY, body })).status).toBe(400);
    expect((await ask('', { keys: Array(61).fill('k').join(',') })).status).toBe(400);
  });
});

function post(body: object): RequestInit {
  return { method: 'POST', headers: { 'Content-Type': 'application/json' }, body: JSON.stringify(body) };
}
