import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { createVotes, LEAD_MS, LEFT_AFTER_MS } from '../../../server/votes/index.ts';
import type { Result } from '../../../engine/result.ts';
import { askVotes, voterOf, type HallHeaders } from '../../support/askVotes.ts';
import { startTestServer, type TestServer } from '../../support/tableServer.ts';

const DESCENT = { lander: 'trivet', site: 'saddlers-bench', world: 'moon', start: 'low', seed: 1 };
const FLIGHT = { question: 'Who can land it?', choices: ['I fly', 'I watch'], isOpen: true, descent: DESCENT };
const LANDING = {
  outcome: 'upright inside limit',
  path: [
    [0, 18],
    [12.5, 1.4],
  ],
  contact: { speed: 0.6, descentRate: 1.1, tip: 2.4, upTo: 6 },
} as const;

function valueOf<Value>(result: Result<Value, { readonly reason: string }>): Value {
  if (!result.ok) throw new Error(result.error.reason);
  return result.value;
}

/** A flight of so many phones; the last of them only watches. */
function beginFlight(phones: number) {
  const time = { ms: 0 };
  const votes = createVotes({ now: () => time.ms });
  const { code, key } = valueOf(votes.open('here'));
  const { number } = valueOf(votes.ask(code, key, FLIGHT, 'here'));
  for (let i = 0; i < phones; i++)
    valueOf(votes.cast(code, { number, voter: voterOf(i), choice: i === phones - 1 ? 1 : 0 }, 'here'));
  const begun = valueOf(votes.begin(code, key, 'here'));
  const land = (i: number) => votes.land(code, { number, voter: voterOf(i), landing: LANDING }, 'here');
  const flown = (from = 0) => {
    const seen = valueOf(votes.look(code, { key, from }, 'here'));
    return 'counts' in seen ? seen.flown : undefined;
  };
  return { votes, time, code, key, number, begun, land, flown };
}

describe('a flight of the phones of a hall', () => {
  it('starts for all at the same moment, and is told to the presenter as they land', () => {
    const { votes, time, code, begun, land, flown } = beginFlight(4);
    expect(begun).toMatchObject({ isOpen: false, startsInMs: LEAD_MS, counts: [3, 1] });
    time.ms = LEAD_MS - 1500;
    // later looks are told less time: each phone starts by its own clock, at the same moment
    const seen = valueOf(votes.look(code, { voter: voterOf(0) }, 'here'));
    expect(seen).toMatchObject({ descent: DESCENT, startsInMs: 1500 });
    expect(seen).not.toHaveProperty('flown');
    expect(land(0)).toMatchObject({ ok: false, error: { status: 409 } });
    time.ms = LEAD_MS + 3000;
    expect(flown()).toEqual({ landings: [], inAir: 3, left: 0 });
    valueOf(land(1));
    expect(flown()).toEqual({ landings: [LANDING], inAir: 2, left: 0 });
  });

  it('counts the landing of a phone once, however often it is said, and none of a phone that watches', () => {
    const { time, land, flown } = beginFlight(3);
    time.ms = LEAD_MS;
    for (let i = 0; i < 3; i++) valueOf(land(0));
    expect(land(2)).toMatchObject({ ok: false, error: { status: 403 } });
    expect(flown()).toMatchObject({ landings: [LANDING], inAir: 1 });
    // what the hall has already it is not told again
    expect(flown(1)?.landings).toEqual([]);
  });

  it('is not held up by a phone that leaves; come back, it may still land', () => {
    const { votes, time, code, land, flown } = beginFlight(3);
    time.ms = LEAD_MS + LEFT_AFTER_MS + 1;
    votes.look(code, { voter: voterOf(1) }, 'here');
    expect(flown()).toEqual({ landings: [], inAir: 1, left: 1 });
    valueOf(land(0));
    expect(flown()).toMatchObject({ inAir: 1, left: 0 });
  });

  it('is asked about anew once it was flown, and landings of the one before count no more', () => {
    const { votes, time, code, key, number, land, flown } = beginFlight(2);
    time.ms = LEAD_MS;
    valueOf(votes.ask(code, key, { ...FLIGHT, isOpen: false }, 'here'));
    valueOf(land(0));
    expect(flown()?.landings).toHaveLength(1);
    const anew = valueOf(votes.ask(code, key, FLIGHT, 'here'));
    expect(anew).toMatchObject({ number: number + 1, counts: [0, 0] });
    expect(anew).not.toHaveProperty('startsInMs');
    expect(land(0)).toMatchObject({ ok: false, error: { status: 409 } });
    expect(votes.begin(code, key, 'here')).toMatchObject({ ok: false, error: { reason: 'Nobody is ready to fly.' } });
  });
});

describe('a flight over the network', () => {
  let server: TestServer;
  beforeAll(async () => {
    server = await startTestServer();
  });
  afterAll(() => server.close());
  const ask = (path: string, body?: object, as: HallHeaders = {}) => askVotes(server.origin, path, body, as);

  it('is begun by whoever has the key, and refuses what is no descent and no landing, saying the field', async () => {
    const { code, key } = (await ask('', {})).json;
    const unknown = await ask('/ask', { ...FLIGHT, descent: { ...DESCENT, lander: 'trivett' } }, { code, key });
    expect([unknown.status, unknown.json.error]).toEqual([
      400,
      expect.stringMatching(/^descent\.lander: expected one/),
    ]);
    const heavy = await ask('/ask', { ...FLIGHT, descent: { ...DESCENT, world: 'earth' } }, { code, key });
    expect([heavy.status, heavy.json.error]).toEqual([
      400,
      expect.stringMatching(/^descent\.world: expected one that/),
    ]);
    const { number } = (await ask('/ask', FLIGHT, { code, key })).json;
    await ask('/cast', { number, voter: voterOf(0), choice: 0 }, { code });
    expect((await ask('/begin', {}, { code })).status).toBe(403);
    expect((await ask('/begin', {}, { code, key })).json.startsInMs).toBeGreaterThan(0);
    expect((await ask('/begin', {}, { code, key })).status).toBe(409);
    for (const [field, spoil] of [
      ['outcome', { outcome: 'well' }],
      ['path', { path: Array.from({ length: 41 }, () => [0, 1]) }],
      ['path', { path: [[0, 1]] }],
      [
        'path\\[1\\]\\[0\\]',
        {
          path: [
            [0, 1],
            ['0', 1],
          ],
        },
      ],
      ['contact\\.speed', { contact: { speed: -1, descentRate: 1 } }],
      ['name', { name: 'Wren' }],
    ] as const) {
      const landed = await ask('/land', { number, voter: voterOf(0), landing: { ...LANDING, ...spoil } }, { code });
      expect(landed.json.error).toMatch(new RegExp(`^landing\\.${field}: expected `));
      expect(landed.status).toBe(400);
    }
    const from = await ask('/seen?from=-1', undefined, { code, key });
    expect([from.status, from.json.error]).toEqual([400, expect.stringMatching(/^from: /)]);
  });
});
