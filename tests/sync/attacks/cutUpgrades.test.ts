import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { checkNetwork } from '../../../client/net/checkNetwork.ts';
import {
  LINE_HEADERS,
  LINE_PATHS,
  packFrames,
  type LineOpening,
  type OpenedLine,
} from '../../../server/messages/index.ts';
import { playedModel } from '../../../engine/table/index.ts';
import { firstLanding } from '../../../levels/index.ts';
import { dearFrame } from '../../support/dearFrame.ts';
import { createHandTicker, enterTable, startTestServer, until, type TestServer } from '../../support/tableServer.ts';
import { openRelay, type Relay } from '../../support/throughProxy.ts';

let server: TestServer;
let relay: Relay;
const ticker = createHandTicker();

beforeAll(async () => {
  server = await startTestServer({ model: playedModel, plan: () => firstLanding(1), ticker });
});
afterAll(() => server.close());
beforeEach(async () => {
  relay = await openRelay(server.port);
});
afterEach(() => relay.close());

async function post(path: string, headers: Readonly<Record<string, string>>, body: BodyInit): Promise<Response> {
  return fetch(`${server.origin}/${path}`, { method: 'POST', headers, body });
}

async function reserve(): Promise<LineOpening> {
  const answer = await post(
    'matchmake/create/table',
    { 'content-type': 'application/json' },
    JSON.stringify({ name: 'Eve' }),
  );
  const { processId, roomId, sessionId } = (await answer.json()) as Readonly<Record<string, string>>;
  return { room: `${processId}/${roomId}`, session: sessionId ?? '' };
}

async function openLine(opening: LineOpening): Promise<string> {
  const answer = await post(LINE_PATHS.open, { 'content-type': 'application/json' }, JSON.stringify(opening));
  return ((await answer.json()) as OpenedLine).line;
}

/** What is said on a line, and with it how the server ended the line, if it did. */
async function say(
  what: 'read' | 'write',
  line: string,
  turn: number,
  frames: readonly Uint8Array[] = [],
): Promise<{ status: number; ended: string | null }> {
  const headers = {
    'content-type': 'application/octet-stream',
    [LINE_HEADERS.line]: line,
    [LINE_HEADERS.turn]: String(turn),
  };
  const answer = await post(LINE_PATHS[what], headers, packFrames(frames));
  await answer.arrayBuffer();
  return { status: answer.status, ended: answer.headers.get(LINE_HEADERS.ended) };
}

const JOIN = new Uint8Array([10]);

describe('a network that cuts every WebSocket', () => {
  it('lets a crew of two fly a whole descent, over plain requests', async () => {
    relay.cutUpgrades();
    const ada = await enterTable(relay.origin, 'Ada');
    const bo = await enterTable(relay.origin, 'Bo', ada.code);
    const happened: string[] = [];
    bo.subscribe((events) => happened.push(...events.map(({ kind }) => kind)));
    for (const [link, command] of [
      [ada, { kind: 'takeSeat', seat: 'flying' }],
      [bo, { kind: 'takeSeat', seat: 'propellant' }],
      [ada, { kind: 'begin' }],
      [bo, { kind: 'setCeiling', percent: 37 }],
      [ada, { kind: 'setThrust', percent: 30 }],
    ] as const)
      expect(await link.command(command)).toEqual({ ok: true, value: undefined });
    // a tenth of a second at a time, each of which has to come through before the next
    while (ada.view?.stage !== 'resolved') {
      const seen = ada.view;
      ticker.turn(6);
      await until('Ada to see it', () => ada.view !== seen, 20_000);
    }
    await until('Bo to see the rest', () => bo.view?.stage === 'resolved', 20_000);
    expect(bo.view?.engine.ceilingPercent).toBe(37);
    expect(ada.view?.flight).toEqual(bo.view?.flight);
    expect(happened.length).toBeGreaterThan(0);
    const text = await bo.recordText();
    // nobody keeps records here: the refusal came all the way too
    expect(text).toMatchObject({ ok: false, error: { code: 'table/no-record' } });

    // a line that is lost in the middle comes back by the same way
    relay.cut();
    await until('both to notice', () => [ada, bo].every(({ state }) => state === 'reconnecting'), 20_000);
    await until('both back', () => [ada, bo].every(({ state }) => state === 'connected'), 20_000);
    expect(ada.view?.you.seat).toBe('flying');
    for (const link of [ada, bo]) link.leave();
  });

  it('is told by the check of the network, with the way that is left', async () => {
    relay.cutUpgrades();
    expect(await checkNetwork(`${relay.origin}/`)).toMatchObject({
      request: { ok: true },
      line: { ok: false },
      requestLine: { ok: true },
    });
  });
});

describe('a line over plain requests', () => {
  it('to a place that was reserved, and never joined, is ended, and so is one that came for nothing', async () => {
    const lines = await Promise.all([openLine(await reserve()), openLine({})]);
    expect(await Promise.all(lines.map(readToEnd))).toEqual(['1008', '1000']);
  });

  it('that nobody reads is given up', async () => {
    const line = await openLine(await reserve());
    await say('write', line, 0, [JOIN]);
    const opened = performance.now();
    let turn = 1;
    // it is written on all the while
    for (;;) {
      const { status } = await say('write', line, turn, [new Uint8Array([18])]);
      if (status === 410) break;
      turn += 1;
      await new Promise((resolve) => setTimeout(resolve, 500));
    }
    expect(performance.now() - opened).toBeGreaterThan(5000);
  }, 60_000);

  it.each([
    ['what is costly to decode', 0, [dearFrame()]],
    ['a turn that was repeated or lost', 1, [JOIN]],
    ['nothing at all', 0, []],
    ['more than so many at once', 0, Array.from({ length: 200 }, () => new Uint8Array([18]))],
  ] as const)('is cut for %s', async (_what, turn, frames) => {
    const line = await openLine(await reserve());
    const end = readToEnd(line);
    await say('write', line, turn, frames);
    expect(await end).toBe('1008');
  });

  it('is nobody else’s: another name leads nowhere, and too large a body is not taken', async () => {
    expect(await say('read', 'A'.repeat(21), 0)).toEqual({ status: 410, ended: null });
    const line = await openLine(await reserve());
    expect(await say('write', line, 0, [new Uint8Array(3000)])).toMatchObject({ status: 413 });
  });
});

async function readToEnd(line: string): Promise<string | undefined> {
  for (let turn = 0; ; turn += 1) {
    const { ended, status } = await say('read', line, turn);
    if (ended !== null) return ended.split(' ')[0];
    if (status !== 200) return String(status);
  }
}
