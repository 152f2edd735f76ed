import { setTimeout as pause } from 'node:timers/promises';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { TableLink } from '../../../client/net/index.ts';
import { askVotes, type HallHeaders } from '../../support/askVotes.ts';
import { openCrowd } from '../../support/phoneCrowd.ts';
import { enterTable, startTestServer, until, type TestServer } from '../../support/tableServer.ts';

const PHONES = 200;
/** Every tenth watches. */
const PILOTS = 180;
const DESCENT = { lander: 'trivet', site: 'saddlers-bench', world: 'moon', start: 'low', seed: 1 };

let server: TestServer;
let table: TableLink;

beforeAll(async () => {
  // as many lines from one address as a server has that nobody has set
  server = await startTestServer({}, { KILTER_LINES_PER_ADDRESS: '120' });
  table = await enterTable(server.origin, 'Ada');
  await table.command({ kind: 'takeSeat', seat: 'flying' });
  await table.command({ kind: 'begin' });
});
afterAll(async () => {
  table.leave();
  await server.close();
});

describe('a hall of 200 phones behind one router', () => {
  it('votes and flies beside a table that goes on: no vote and no landing is lost or counted twice', async () => {
    const ask = (path: string, body?: object, as: HallHeaders = {}) => askVotes(server.origin, path, body, as);
    const { code, key } = (await ask('', {})).json;
    const look = async (from = 0) => (await ask(`/seen?from=${from}`, undefined, { code, key })).json;
    const untilSeen = async (is: (seen: Awaited<ReturnType<typeof look>>) => boolean) => {
      while (!is(await look())) await pause(200);
    };
    const crowd = openCrowd({
      origin: server.origin,
      code,
      phones: PHONES,
      choiceOf: (i) => (i % 10 === 9 ? 1 : 0),
      flownMs: (i) => 10 * i,
      lookMs: 1000,
    });
    const question = { question: 'Which falls?', choices: ['A', 'B', 'None of them'], isOpen: true };
    await ask('/ask', question, { code, key });
    await untilSeen(({ counts }) => counts?.join() === `${PILOTS},${PHONES - PILOTS},0`);

    await ask('/ask', { ...question, choices: ['I fly', 'I watch'], descent: DESCENT }, { code, key });
    await untilSeen(({ counts }) => counts?.join() === `${PILOTS},${PHONES - PILOTS}`);
    await ask('/begin', {}, { code, key });
    await untilSeen(({ flown }) => flown?.landings.length === PILOTS);
    expect((await look()).flown).toMatchObject({ inAir: 0, left: 0 });
    expect((await look(PILOTS - 1)).flown?.landings).toHaveLength(1);
    // the table goes on beside it
    await table.command({ kind: 'again' });
    const tick = () => table.view?.flight.tick ?? 0;
    await until('the table to begin anew', () => table.view?.stage === 'descending', 30_000);
    const tickNow = tick();
    await until('the table to tick', () => tick() > tickNow, 30_000);
    expect(table.state).toBe('connected');
    await crowd.end();
    // too many for a moment is no loss: what a phone says it says again
    expect([...crowd.refusals.keys()].filter((what) => !/ (0|429)$/.test(what))).toEqual([]);
    expect(crowd.answers).toBeGreaterThan(2 * PHONES);
  });
});
