import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { createVotes, MOST_VOTERS } from '../../../server/votes/index.ts';
import { askVotes, voterOf, type HallHeaders } from '../../support/askVotes.ts';
import { startTestServer, type TestServer } from '../../support/tableServer.ts';

let server: TestServer;

beforeAll(async () => {
  server = await startTestServer();
});

afterAll(() => server.close());

const FALLS = { question: 'Which falls?', choices: ['A', 'B', 'None of them'], isOpen: true };
const ask = (path: string, body?: object, as: HallHeaders = {}) => askVotes(server.origin, path, body, as);

describe('the votes of a hall', () => {
  it('count one vote for each of 200 phones behind one router, told to the presenter alone', async () => {
    const { code, key } = (await ask('', {})).json;
    const { number } = (await ask('/ask', FALLS, { code, key })).json;
    const votes = Array.from({ length: 200 }, (_, i) => ({ number, voter: voterOf(i), choice: i % 2 }));
    const statuses = await Promise.all(votes.map(async (vote) => (await ask('/cast', vote, { code })).status));
    expect(new Set(statuses)).toEqual(new Set([200]));
    // ten change their minds
    for (const vote of votes.slice(0, 10)) await ask('/cast', { ...vote, choice: 2 }, { code });
    expect((await ask('/seen', undefined, { code, key })).json.counts).toEqual([95, 95, 10]);
    const seen = await ask('/seen', undefined, { code });
    expect(seen.json).not.toHaveProperty('counts');
    expect(seen.json).not.toHaveProperty('key');

    // closed, it takes none; the same question opened again still has them
    expect((await ask('/ask', { ...FALLS, isOpen: false }, { code, key })).json.counts).toEqual([95, 95, 10]);
    expect((await ask('/cast', votes[0], { code })).status).toBe(409);
    expect((await ask('/ask', FALLS, { code, key })).json.counts).toEqual([95, 95, 10]);
    // another question begins without votes, and a vote on the one before counts for nothing
    expect((await ask('/ask', { ...FALLS, question: 'And now?' }, { code, key })).json.counts).toEqual([0, 0, 0]);
    expect((await ask('/cast', votes[0], { code })).status).toBe(409);
  });

  it('are asked by whoever has the key, and refuse what is no vote, saying the field', async () => {
    const { code, key } = (await ask('', {})).json;
    expect((await ask('/ask', FALLS, { code, key: 'another' })).status).toBe(403);
    expect((await ask('/seen', undefined, { code, key: 'another' })).status).toBe(403);
    const { number } = (await ask('/ask', FALLS, { code, key })).json;
    const vote = { number, voter: voterOf(1), choice: 0 };
    for (const [field, wrong] of [
      ['choice', { ...vote, choice: 3 }],
      ['choice', { ...vote, choice: -1 }],
      ['voter', { ...vote, voter: 'Wren' }],
      ['number', { ...vote, number: '1' }],
    ] as const) {
      const answer = await ask('/cast', wrong, { code });
      expect([answer.status, answer.json.error]).toEqual([400, expect.stringMatching(new RegExp(`^${field}: `))]);
    }
    expect((await ask('/seen', undefined, { code, key })).json.counts).toEqual([0, 0, 0]);
  });

  it('tell a guesser of codes nothing after a few', () => {
    const votes = createVotes({ now: () => 0 });
    const statuses = Array.from({ length: 22 }, () => {
      const answer = votes.look('BBBBBB', {}, 'here');
      return answer.ok ? 200 : answer.error.status;
    });
    expect(statuses.slice(0, 20)).toEqual(Array.from({ length: 20 }, () => 404));
    expect(statuses.slice(20)).toEqual([429, 429]);
  });

  it('end: so many phones in a hall, so many halls, and none for longer than two hours without a question', () => {
    let ms = 0;
    const votes = createVotes({ now: () => ms });
    const opened = Array.from({ length: 6 }, () => votes.open('here'));
    expect(opened.every(({ ok }) => ok)).toBe(true);
    expect(votes.open('here').ok).toBe(false);
    expect(votes.open('there').ok).toBe(true);

    const [first] = opened;
    if (first?.ok !== true) throw new Error('not opened');
    const { code, key } = first.value;
    votes.ask(code, key, FALLS, 'here');
    const cast = (i: number) => votes.cast(code, { number: 1, voter: voterOf(i), choice: 0 }, 'here').ok;
    for (let i = 0; i < MOST_VOTERS; i++) expect(cast(i)).toBe(true);
    expect(cast(MOST_VOTERS)).toBe(false);
    expect(cast(0)).toBe(true);

    // where nothing was ever asked nobody stands: a minute later there is room for others
    ms = 60_001;
    for (let i = 0; i < 5; i++) expect(votes.open('here').ok).toBe(true);
    expect(votes.open('here').ok).toBe(false);
    expect(votes.look(code, {}, 'here').ok).toBe(true);

    ms = 2 * 3600 * 1000 + 1;
    expect(votes.open('here').ok).toBe(true);
    expect(votes.look(code, {}, 'here').ok).toBe(false);
  });
});
