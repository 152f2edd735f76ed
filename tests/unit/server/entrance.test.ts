import { describe, expect, it } from 'vitest';
import { createEntrance, createTableRegistry, GUESS_RATES, type OpenTable } from '../../../server/rooms/index.ts';

/** Somebody from here has a place at a table. */
const KNOWN = '203.0.113.1';

const table: OpenTable = {
  roomId: 'room',
  opener: KNOWN,
  isJoined: true,
  desertedSinceMs: undefined,
  hasPlace: () => false,
  hasAddress: (address) => address === KNOWN,
  end: () => undefined,
};

function guesser() {
  const registry = createTableRegistry({ mostTables: 9, mostPerAddress: 9 });
  registry.open(table);
  const clock = { nowMs: 0 };
  const entrance = createEntrance({ registry, isDraining: () => false, now: () => clock.nowMs });
  const guess = (ip: string) =>
    entrance.invokeMethod('join', 'table', { code: 'BBBBBB', name: 'Eve' }, { ip }).then(
      () => 200,
      (error: { code: number }) => error.code,
    );
  return { clock, guess };
}

describe('guessing codes', () => {
  it('from one address ends soon, and goes on slowly', async () => {
    const { clock, guess } = guesser();
    const codes = [];
    for (let i = 0; i < GUESS_RATES.ofAddress.burst + 1; i += 1) codes.push(await guess('198.51.100.1'));
    expect(codes.at(-2)).toBe(404);
    expect(codes.at(-1)).toBe(429);
    clock.nowMs += 5000;
    expect([await guess('198.51.100.1'), await guess('198.51.100.1')]).toEqual([404, 429]);
    expect(await guess('198.51.100.2')).toBe(404);
  });

  it('from very many addresses is held to a few a second together, and those who sit at a table still get in', async () => {
    const { clock, guess } = guesser();
    let looked = 0;
    const seconds = 20;
    for (let second = 0; second < seconds; second += 1) {
      for (let i = 0; i < 200; i += 1)
        if ((await guess(`2001:db8:${second.toString(16)}:${i.toString(16)}::/64`)) === 404) looked += 1;
      clock.nowMs += 1000;
    }
    expect(looked).toBeLessThanOrEqual(GUESS_RATES.ofAll.burst + seconds * GUESS_RATES.ofAll.perSecond);
    expect(await guess('2001:db8:ffff:1::/64')).toBe(404);
    clock.nowMs -= 1000;
    for (let i = 0; i < 10; i += 1) await guess(`2001:db8:aaaa:${i}::/64`);
    expect(await guess('2001:db8:ffff:2::/64')).toBe(429);
    expect(await guess(KNOWN)).toBe(404);
  });
});
