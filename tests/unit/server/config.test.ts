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

  it('names every problem at once', () => {
    const config = parseConfig({ PORT: 'x', KILTER_MOST_TABLES: '0', KILTER_SEAT_KEPT_SECONDS: '1' });
    expect(config.ok ? [] : config.error.map((line) => line.split(':')[0])).toEqual([
      'PORT',
      'KILTER_MOST_TABLES',
      'KILTER_SEAT_KEPT_SECONDS',
    ]);
  });
});
