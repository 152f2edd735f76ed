import { describe, expect, it } from 'vitest';
import { parseConfig } from '../../../server/config.ts';

describe('the server configuration', () => {
  it('has a default for everything', () => {
    expect(parseConfig({})).toMatchObject({
      ok: true,
      value: { port: 2567, host: undefined, mostTables: 60, seatKeptSeconds: 300 },
    });
  });

  it('takes what is given, and nothing from an empty variable', () => {
    const config = parseConfig({
      PORT: ' 2701 ',
      HOST: '127.0.0.1',
      KILTER_MOST_TABLES: '5',
      KILTER_SEAT_KEPT_SECONDS: '',
    });
    expect(config).toMatchObject({
      ok: true,
      value: { port: 2701, host: '127.0.0.1', mostTables: 5, seatKeptSeconds: 300 },
    });
  });

  it.each(['abc', '-1', '65536', '25.67', '0x10', '1e3', 'Infinity', '99999999999999999999'])(
    'refuses PORT=%s in one line that names variable, expectation and what it got',
    (text) => {
      expect(parseConfig({ PORT: text })).toEqual({
        ok: false,
        error: [`PORT: expected a whole number from 0 to 65535, got "${text}"`],
      });
    },
  );

  it('takes an administrator’s key that is not easily guessed, and quotes none that it refuses', () => {
    expect(parseConfig({ KILTER_ADMIN_KEY: ' hollin-room-2031-key ' })).toMatchObject({
      value: { administratorKey: 'hollin-room-2031-key' },
    });
    expect(parseConfig({})).toMatchObject({ value: { administratorKey: undefined } });
    for (const key of ['too-short', 'with spaces in between', 'x'.repeat(129)])
      expect(parseConfig({ KILTER_ADMIN_KEY: key })).toEqual({
        ok: false,
        error: ['KILTER_ADMIN_KEY: expected 16 to 128 letters, digits or signs without spaces'],
      });
  });

  it('takes Redis and the address of this process together alone, and quotes no address of Redis', () => {
    const both = { KILTER_REDIS: 'redis://127.0.0.1:6379', KILTER_PUBLIC_ADDRESS: 'kilter.test:8080/p1' };
    expect(parseConfig(both)).toMatchObject({
      value: { redis: 'redis://127.0.0.1:6379', publicAddress: 'kilter.test:8080/p1' },
    });
    const wrong = [
      { KILTER_REDIS: both.KILTER_REDIS },
      { KILTER_PUBLIC_ADDRESS: both.KILTER_PUBLIC_ADDRESS },
      { ...both, KILTER_PUBLIC_ADDRESS: 'https://kilter.test/p1' },
      { ...both, KILTER_REDIS: 'user:word@kilter.test' },
    ];
    for (const environment of wrong) {
      const config = parseConfig(environment);
      expect(config.ok ? '' : config.error.join('\n')).toMatch(/^KILTER_(REDIS|PUBLIC_ADDRESS): expected/);
      expect(config.ok ? '' : config.error.join('\n')).not.toContain('word');
    }
  });

  it.each([
    ['', ''],
    ['/kilter', '/kilter'],
    ['/kilter/', '/kilter'],
    ['/games/kilter', '/games/kilter'],
  ])('takes "%s" as the path below which it lies', (text, path) => {
    expect(parseConfig({ KILTER_BASE_PATH: text })).toMatchObject({ ok: true, value: { basePath: path } });
  });

  it.each(['kilter', '/', '/kil ter', '//kilter', '/kilter?'])('refuses "%s" as such a path', (text) => {
    expect(parseConfig({ KILTER_BASE_PATH: text })).toEqual({
      ok: false,
      error: [`KILTER_BASE_PATH: expected a path such as /kilter, got "${text}"`],
    });
  });

  it('names every problem at once', () => {
    const config = parseConfig({ PORT: 'x', KILTER_MOST_TABLES: '0', KILTER_SEAT_KEPT_SECONDS: '1' });
    expect(config.ok ? [] : config.error.map((line) => line.split(':')[0])).toEqual([
      'PORT',
      'KILTER_MOST_TABLES',
      'KILTER_SEAT_KEPT_SECONDS',
    ]);
  });
});
