import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest';
import { joinSharedTable, openSharedTable, type TableLink } from '../../../client/net/index.ts';
import { createTabStore, startTestServer, until, type TestServer } from '../../support/tableServer.ts';

let server: TestServer;
const links: TableLink[] = [];

async function open(name: string): Promise<TableLink> {
  const opened = await openSharedTable({ origin: server.origin, store: createTabStore(), name });
  if (!opened.ok) throw new Error(opened.error.reason);
  links.push(opened.value);
  return opened.value;
}

async function join(name: string, code: string): Promise<TableLink> {
  const joined = await joinSharedTable({ origin: server.origin, store: createTabStore(), name, code });
  if (!joined.ok) throw new Error(joined.error.reason);
  links.push(joined.value);
  return joined.value;
}

beforeAll(async () => {
  server = await startTestServer();
});
afterEach(() => {
  for (const link of links.splice(0)) link.leave();
});
afterAll(() => server.close());

describe('two clients of one table', () => {
  it('share a descent: one flies, the other limits the thrust, both read the same scorecard', async () => {
    const ada = await open('Ada');
    const bo = await join('Bo', ada.code ?? '');
    expect(await ada.command({ kind: 'takeSeat', seat: 'flying' })).toEqual({ ok: true });
    expect(await bo.command({ kind: 'takeSeat', seat: 'propellant' })).toEqual({ ok: true });
    await until('both to see both seats', () =>
      [ada, bo].every((link) => link.view?.seats.filter((seat) => seat.name !== undefined).length === 2),
    );
    expect(ada.view?.you.holds).toEqual({ thrust: true, tilt: true });
    expect(bo.view?.you.holds).toEqual({ thrust: false, tilt: false });

    expect(await ada.command({ kind: 'begin' })).toEqual({ ok: true });
    expect(await bo.command({ kind: 'setCeiling', percent: 20 })).toEqual({ ok: true });
    expect(await ada.command({ kind: 'setTilt', degrees: -4 })).toEqual({ ok: true });
    await until('the commands of both to be flown', () => {
      const flown = ada.view?.flight.commanded;
      return flown?.thrustPercent === 20 && flown.tiltDeg === -4;
    });
    await until('both to have the scorecard', () => [ada, bo].every((link) => link.view?.scorecard !== undefined));
    expect(ada.view?.scorecard).toEqual(bo.view?.scorecard);
    expect(ada.view?.flight).toEqual(bo.view?.flight);
  });

  it('get each happening once, after the view that it belongs to', async () => {
    const ada = await open('Ada');
    const bo = await join('Bo', ada.code ?? '');
    const heard: string[][] = [[], []];
    [ada, bo].forEach((link, i) =>
      link.subscribe((events) => {
        for (const event of events) heard[i]?.push(`${event.kind} ${event.tick} ${link.view?.stage}`);
      }),
    );
    await ada.command({ kind: 'takeSeat', seat: 'flying' });
    await ada.command({ kind: 'begin' });
    await ada.command({ kind: 'setThrust', percent: 0 });
    await until('the end', () => heard.every((list) => list.length > 0));
    expect(heard[0]).toHaveLength(1);
    expect(heard[0]?.[0]).toMatch(/^outcome \d+ resolved$/);
    expect(heard[1]).toEqual(heard[0]);
  });

  it('refuse a command from the wrong seat with the reason', async () => {
    const ada = await open('Ada');
    const bo = await join('Bo', ada.code ?? '');
    await ada.command({ kind: 'takeSeat', seat: 'flying' });
    await ada.command({ kind: 'begin' });
    expect(await bo.command({ kind: 'setThrust', percent: 10 })).toEqual({
      ok: false,
      error: { code: 'table/not-seated', reason: 'Take a seat first.' },
    });
    await bo.command({ kind: 'takeSeat', seat: 'site' });
    expect(await bo.command({ kind: 'setTilt', degrees: 3 })).toMatchObject({
      ok: false,
      error: { reason: 'That is for Flying to do, and you sit at Site.' },
    });
    expect(await bo.command({ kind: 'takeSeat', seat: 'flying' })).toMatchObject({
      error: { reason: 'Flying is taken by Ada.' },
    });
  });

  it('are told that a seat is free when the one who sat there leaves', async () => {
    const ada = await open('Ada');
    const bo = await join('Bo', ada.code ?? '');
    await bo.command({ kind: 'takeSeat', seat: 'lead' });
    await until('Bo to be seen', () => ada.view?.seats[0]?.name === 'Bo');
    bo.leave();
    expect(bo.state).toBe('closed');
    await until('the seat to be free', () => ada.view?.seats[0]?.name === undefined);
    expect(await bo.command({ kind: 'begin' })).toMatchObject({ ok: false, error: { code: 'table/closed' } });
  });
});

describe('a table code', () => {
  it('is six of the twenty consonants, shown as two groups', async () => {
    const ada = await open('Ada');
    expect(ada.code).toMatch(/^[BCDFGHJKLMNPQRSTVWXZ]{3} [BCDFGHJKLMNPQRSTVWXZ]{3}$/);
  });

  it('works in lower case, with hyphens and without the space', async () => {
    const ada = await open('Ada');
    const code = ada.code ?? '';
    for (const typed of [code.toLowerCase(), code.replace(' ', '-'), code.replace(' ', '')]) {
      const link = await join('Bo', typed);
      expect(link.code).toBe(code);
    }
  });

  it('that no table has is refused in words', async () => {
    const refused = await joinSharedTable({
      origin: server.origin,
      store: createTabStore(),
      name: 'Bo',
      code: 'BBB BBB',
    });
    expect(refused).toMatchObject({ ok: false, error: { code: 'table/no-table' } });
    expect(refused.ok ? '' : refused.error.reason).toContain('No open table has this code.');
  });

  it('that is no code is refused without asking the server', async () => {
    const refused = await joinSharedTable({
      origin: 'http://127.0.0.1:1',
      store: createTabStore(),
      name: 'Bo',
      code: 'AEIOUY',
    });
    expect(refused).toMatchObject({ ok: false, error: { code: 'table/code' } });
  });
});

describe('a name', () => {
  it.each(['', 'x'.repeat(25), 'A\u202Eda'])('"%s" is refused by the server with the reason', async (name) => {
    const refused = await openSharedTable({ origin: server.origin, store: createTabStore(), name });
    expect(refused).toMatchObject({ ok: false, error: { code: 'table/not-joined' } });
    expect(refused.ok ? '' : refused.error.reason).toMatch(/name/);
  });
});

describe('a server that is not there', () => {
  it('gives a refusal, not an exception', async () => {
    const refused = await openSharedTable({ origin: 'http://127.0.0.1:1', store: createTabStore(), name: 'Ada' });
    expect(refused).toMatchObject({ ok: false, error: { code: 'table/no-server' } });
  });
});
