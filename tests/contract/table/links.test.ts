import { afterEach, describe, expect, it } from 'vitest';
import type { Command, TablePlan, TableView } from '../../../engine/table/index.ts';
import type { DescentEvent } from '../../../engine/world/index.ts';
import { STEPS_PER_PATCH, STEPS_PER_READING } from '../../../server/rooms/index.ts';
import { BENCHES, type LinkBench } from '../../support/linkBench.ts';
import { plainChoice } from '../../support/plainChoice.ts';
import { plainLander } from '../../support/plainLander.ts';

const plan: TablePlan = {
  title: 'A short descent',
  landerId: 'plain',
  siteId: 'flat',
  worldId: 'moon',
  seed: 7,
  choice: plainChoice,
  setup: {
    lander: plainLander({ propellant: 200 }),
    gravity: 1.62422,
    terrain: {
      firstX: -100,
      spacing: 2,
      heights: Array.from({ length: 101 }, (_, i) => -0.02 * i),
      friction: 0.8,
    },
    start: { x: 0, y: 12, angle: 0.02, vx: 0.8, vy: -1.5, rate: 0 },
    propellant: 150,
  },
};

/** Far more than any of these descents takes: 40 s. */
const MOST_TURNS = 800;

let bench: LinkBench | undefined;

afterEach(async () => {
  await bench?.close();
  bench = undefined;
});

describe.each(Object.keys(BENCHES) as (keyof typeof BENCHES)[])('a link to a %s table', (kind) => {
  async function open(): Promise<LinkBench> {
    bench = await BENCHES[kind](plan);
    return bench;
  }

  it('is connected and has a view as soon as it is there', async () => {
    const { link } = await open();
    expect(link.kind).toBe(kind);
    expect(link.state).toBe('connected');
    expect(link.view).toMatchObject({
      stage: 'gathering',
      held: false,
      you: { id: 'm1', name: 'Ada', holds: { thrust: false, tilt: false } },
      plan: {
        title: 'A short descent',
        landerId: 'plain',
        siteId: 'flat',
        worldId: 'moon',
        seed: 7,
        choice: plainChoice,
      },
      flight: { tick: 0 },
    });
    expect(link.code === undefined).toBe(kind === 'local');
  });

  it('shows what a command changed after the next ticks, as a new object', async () => {
    const table = await open();
    const before = table.link.view;
    expect(await table.say({ kind: 'takeSeat', seat: 'flying' })).toBe('done');
    await table.turn();
    expect(table.link.view).not.toBe(before);
    expect(before?.you.seat).toBeUndefined();
    expect(table.link.view?.you).toMatchObject({ seat: 'flying', holds: { thrust: true, tilt: true } });
    expect(table.link.view?.seats.find(({ seat }) => seat === 'flying')).toMatchObject({
      name: 'Ada',
      connected: true,
    });
  });

  it('brings refusals as values with the authority’s own words', async () => {
    const table = await open();
    expect(await table.link.command({ kind: 'begin' })).toEqual({
      ok: false,
      error: { code: 'table/not-seated', reason: 'Take a seat first.' },
    });
    await table.say({ kind: 'takeSeat', seat: 'lead' });
    await table.say({ kind: 'begin' });
    expect(await table.link.command({ kind: 'setThrust', percent: 12 })).toEqual({
      ok: false,
      error: { code: 'table/not-yours', reason: 'That is for Flying to do, and you sit at Lead.' },
    });
  });

  it('calls back after each new view until the subscription is ended, with each happening once', async () => {
    const table = await open();
    const heard: DescentEvent[] = [];
    let calls = 0;
    const end = table.link.subscribe((events) => {
      calls += 1;
      heard.push(...events);
    });
    // nobody at the controls: the stand-in lands it
    await table.say({ kind: 'takeSeat', seat: 'site' });
    await table.say({ kind: 'begin' });
    for (let i = 0; i < MOST_TURNS && table.link.view?.stage !== 'resolved'; i += 1) await table.turn();
    expect(table.link.view?.stage).toBe('resolved');
    expect(calls).toBeGreaterThan(10);
    expect(heard.filter(({ kind: what }) => what === 'outcome')).toHaveLength(1);
    expect(heard.filter(({ kind: what }) => what === 'footDown').length).toBeGreaterThanOrEqual(2);
    end();
    calls = 0;
    await table.say({ kind: 'again' });
    await table.turn();
    expect(calls).toBe(0);
  });

  it('is closed by leaving, refuses everything after that and gives no reason of its own', async () => {
    const table = await open();
    table.link.leave();
    table.link.leave();
    expect(table.link.state).toBe('closed');
    expect(table.link.closedBecause).toBeUndefined();
    expect(await table.say({ kind: 'takeSeat', seat: 'lead' })).toBe('table/closed');
  });
});

/** Commands by the turn before which they are given. */
const SCRIPT: Readonly<Record<number, readonly Command[]>> = {
  0: [{ kind: 'takeSeat', seat: 'lead' }],
  1: [{ kind: 'takeSeat', seat: 'flying' }],
  2: [{ kind: 'begin' }, { kind: 'setThrust', percent: 31 }],
  10: [{ kind: 'setTilt', degrees: -6 }],
  18: [{ kind: 'hold' }, { kind: 'setTilt', degrees: 4 }],
  22: [{ kind: 'resume' }, { kind: 'setThrust', percent: 28 }],
  40: [{ kind: 'setTilt', degrees: 0 }],
  60: [{ kind: 'leaveSeat' }],
  70: [
    { kind: 'takeSeat', seat: 'propellant' },
    { kind: 'setCeiling', percent: 22 },
  ],
};

async function play(kind: keyof typeof BENCHES): Promise<readonly TableView[]> {
  bench = await BENCHES[kind](plan);
  const views: TableView[] = [];
  for (let turn = 0; turn < MOST_TURNS; turn += 1) {
    for (const command of SCRIPT[turn] ?? []) expect(await bench.say(command)).toBe('done');
    await bench.turn();
    const { view } = bench.link;
    if (view !== undefined) views.push(view);
    if (view?.stage === 'resolved') break;
  }
  await bench.close();
  bench = undefined;
  return views;
}

const TURNS_PER_READING = STEPS_PER_READING / STEPS_PER_PATCH;

/** A shared table sends what a seat alone reads with one turn of a few. */
function withoutReadings(views: readonly TableView[]): readonly object[] {
  return views.map(
    ({ propellantReadings: _propellant, siteReadings: _site, leadReadings: _lead, sources: _sources, ...rest }) => rest,
  );
}

function withReadings(views: readonly TableView[]): readonly TableView[] {
  return views.filter((_, turn) => (turn + 1) % TURNS_PER_READING === 0);
}

/** Minus zero travels as zero. */
function withoutMinusZero(views: readonly object[]): unknown {
  return JSON.parse(JSON.stringify(views));
}

describe('a local and a shared table', () => {
  it('show the same views to the bit, turn by turn, for the same commands between the same ticks', async () => {
    const local = await play('local');
    const shared = await play('shared');
    expect(local.length).toBeGreaterThan(100);
    expect(shared.length).toBe(local.length);
    expect(withoutMinusZero(withoutReadings(shared))).toEqual(withoutMinusZero(withoutReadings(local)));
    expect(withoutMinusZero(withReadings(shared))).toEqual(withoutMinusZero(withReadings(local)));
    expect(withReadings(local).some(({ propellantReadings }) => propellantReadings !== undefined)).toBe(true);
    const last = local.at(-1);
    expect(last?.scorecard).toBeDefined();
    // the script was flown: thrust and tilt of the crew and of the stand-in all occur
    const flown = new Set(local.map(({ flight }) => `${flight.commanded.thrustPercent} ${flight.commanded.tiltDeg}`));
    expect(flown.size).toBeGreaterThan(5);
  });
});
