import { afterEach, describe, expect, it } from 'vitest';
import { joinSharedTable, openLocalTable, openSharedTable, type TableLink } from '../../../client/net/index.ts';
import type { Pace, TablePlan } from '../../../engine/table/index.ts';
import { plainModel, plainPlan } from '../../support/plainTable.ts';
import { openRelay } from '../../support/throughProxy.ts';
import {
  createHandTicker,
  createTabStore,
  startTestServer,
  until,
  type TestServer,
} from '../../support/tableServer.ts';

const QUARTER: TablePlan = { ...plainPlan, choice: { ...plainPlan.choice, pace: 0.25 } };

let server: TestServer;
const links: TableLink[] = [];

async function open(name: string): Promise<TableLink> {
  const opened = await openSharedTable({ origin: server.origin, store: createTabStore(), name });
  if (!opened.ok) throw new Error(opened.error.reason);
  links.push(opened.value);
  return opened.value;
}

async function join(name: string, code: string, origin = server.origin): Promise<TableLink> {
  const joined = await joinSharedTable({ origin, store: createTabStore(), name, code });
  if (!joined.ok) throw new Error(joined.error.reason);
  links.push(joined.value);
  return joined.value;
}

const tickOf = (link: TableLink) => link.view?.flight.tick ?? 0;
const toPace = (link: TableLink, pace: Pace) => link.command({ kind: 'setPace', pace });

/** Hangs in the air, so that the descent lasts. */
async function begin(link: TableLink): Promise<void> {
  await link.command({ kind: 'takeSeat', seat: 'flying' });
  expect(await link.command({ kind: 'begin' })).toEqual({ ok: true });
  expect(await link.command({ kind: 'setThrust', percent: 100 })).toEqual({ ok: true });
}

describe('a table at a slower pace', () => {
  afterEach(async () => {
    for (const link of links.splice(0)) link.leave();
    await server.close();
  });

  it('makes a tick every fourth step, shows it to everybody, and goes on at another pace when it is told to', async () => {
    const ticker = createHandTicker();
    server = await startTestServer({ ticker, plan: () => QUARTER });
    const ada = await open('Ada');
    const bo = await join('Bo', ada.code ?? '');
    await begin(ada);
    ticker.turn(120);
    await until('30 ticks', () => tickOf(ada) === 30 && tickOf(bo) === 30);
    expect(bo.view?.pace).toBe(0.25);
    await bo.command({ kind: 'takeSeat', seat: 'site' });
    expect(await toPace(bo, 1)).toMatchObject({ ok: false, error: { code: 'table/not-deciding' } });
    expect(await toPace(ada, 0.5)).toEqual({ ok: true });
    ticker.turn(120);
    await until('60 ticks more', () => tickOf(ada) === 90);
    expect(await toPace(ada, 1)).toEqual({ ok: true });
    ticker.turn(120);
    await until('120 ticks more', () => tickOf(bo) === 210);
    expect(bo.view?.pace).toBe(1);
  });

  it('keeps to the clock: in two seconds at a quarter it makes about thirty ticks', async () => {
    server = await startTestServer({ plan: () => QUARTER });
    const ada = await open('Ada');
    await begin(ada);
    const from = tickOf(ada);
    const start = performance.now();
    await new Promise((resolve) => setTimeout(resolve, 2000));
    const expected = ((performance.now() - start) / 1000) * 15;
    // a sending and a tick may be under way at either end
    expect(Math.abs(tickOf(ada) - from - expected)).toBeLessThan(4);
  });

  it('keeps the seat of a member whose line dropped for the stated time of the clock, not of the descent', async () => {
    const ticker = createHandTicker();
    server = await startTestServer({ ticker, plan: () => QUARTER }, { KILTER_SEAT_KEPT_SECONDS: '10' });
    const ada = await open('Ada');
    const relay = await openRelay(server.port);
    const bo = await join('Bo', ada.code ?? '', relay.origin);
    await begin(ada);
    await bo.command({ kind: 'takeSeat', seat: 'site' });
    const siteOf = () => ada.view?.seats.find(({ seat }) => seat === 'site');
    ticker.turn(3);
    await until('Bo at Site', () => siteOf()?.name === 'Bo');
    relay.refuse();
    relay.cut();
    await until('Bo away', () => {
      ticker.turn(3);
      return siteOf()?.connected === false;
    });
    ticker.turn(9 * 60);
    await until('the ticks', () => tickOf(ada) > 0);
    expect(siteOf()?.name).toBe('Bo');
    ticker.turn(2 * 60);
    await until('Site free', () => siteOf()?.name === undefined);
    await relay.close();
  });
});

describe('a table in the page at a slower pace', () => {
  it('makes a tick in four tick times, and as many as ever once the descent is over', () => {
    let nowMs = 0;
    let due: (() => void) | undefined;
    const clock = {
      now: () => nowMs,
      nextFrame(callback: () => void) {
        due = callback;
        return () => void (due = undefined);
      },
    };
    const opened = openLocalTable({ plan: QUARTER, model: plainModel, name: 'Ada', clock });
    if (!opened.ok) throw new Error(opened.error.reason);
    const link = opened.value;
    const pass = (frames: number) => {
      for (let i = 0; i < frames; i += 1) {
        nowMs += 1000 / 60;
        due?.();
      }
    };
    void link.command({ kind: 'takeSeat', seat: 'flying' });
    void link.command({ kind: 'begin' });
    void link.command({ kind: 'setThrust', percent: 100 });
    pass(121);
    expect(tickOf(link)).toBe(30);
    void toPace(link, 1);
    pass(60);
    expect(Math.abs(tickOf(link) - 90)).toBeLessThanOrEqual(1);
    link.leave();
  });
});
