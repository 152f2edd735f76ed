import { describe, expect, it } from 'vitest';
import { CAUTION } from '../../../engine/constants.ts';
import { callEveryFormat, callKilter } from './runKilter.ts';

const LINES: readonly (readonly [line: string, list: string])[] = [
  ['stand steeple --slope 5 --step 45', 'byAzimuth'],
  ['stand --half-stance 1 --center-height 2', 'byAzimuth'],
  ['limit trivet --descent 1 --step 90', 'byAzimuth'],
  ['limit trivet --slope 50 --step 45', 'byAzimuth'],
  ['limit --half-stance 1 --center-height 2 --mass 100 --inertia 0', 'byAzimuth'],
  ['stance trivet --worlds moon,earth', 'worlds'],
  ['compare trivet', 'rows'],
  ['worlds', 'worlds'],
];

/** The cells of one line of CSV, with quotes as RFC 4180 has them. */
function cellsOf(line: string): readonly string[] {
  return [...line.matchAll(/(?:^|,)(?:"((?:[^"]|"")*)"|([^",]*))/g)].map(([, quoted, plain]) =>
    quoted === undefined ? (plain ?? '') : quoted.replaceAll('""', '"'),
  );
}

describe('CSV', () => {
  it.each(LINES)('of kilter %s begins with the caution and holds the list of the JSON', async (line, list) => {
    const { csv, json } = await callEveryFormat(line.split(' '));
    const lines = csv.split('\n');
    expect(lines[0]).toBe(`# ${CAUTION}`);
    expect(lines.at(-1)).toBe('');
    const [names = [], ...rows] = lines.filter((text) => text !== '' && !text.startsWith('#')).map(cellsOf);
    const records = (json as Record<string, Record<string, string | number | boolean | null | number[]>[]>)[list] ?? [];
    expect(records.length).toBeGreaterThan(0);
    expect(rows).toHaveLength(records.length);
    for (const [index, record] of records.entries()) {
      expect(rows[index]).toHaveLength(names.length);
      for (const [name, value] of Object.entries(record)) {
        const cell = rows[index]?.[names.indexOf(name)];
        expect(cell).toBe(value === null ? '' : Array.isArray(value) ? value.join(' ') : String(value));
      }
    }
  });

  it('says in a line of comment what lies outside the checked range', async () => {
    const { out } = await callKilter('limit trivet --slope 50 --csv'.split(' '));
    expect(out.split('\n')[1]).toBe('# Outside checked range: slope 50 deg, checked from -12 to 12.');
  });

  it('of a limit says of which lander, where, on which slope, at which descent rate and body rate', async () => {
    const { out } = await callKilter(
      'limit steeple --world mars --slope 8 --descent 1.5 --rate 2 --closed-form --step 90 --csv'.split(' '),
    );
    expect(out.split('\n')[1]).toBe('# Steeple on Mars, slope 8 deg, descent rate 1.5 m/s, body rate 2 deg/s');
  });

  it('says in a line of comment why it has no rows', async () => {
    for (const verb of ['stand', 'limit']) {
      const { status, out } = await callKilter(`${verb} trivet --missing 1,2 --csv`.split(' '));
      expect(status).toBe(0);
      const lines = out.trim().split('\n');
      expect(lines.every((line) => line.startsWith('# '))).toBe(true);
      expect(lines[1]).toContain('does not stand');
    }
  });

  it('and JSON at once are refused', async () => {
    for (const [line] of LINES)
      expect((await callKilter([...line.split(' '), '--csv', '--json'])).err).toBe(
        'kilter: expected --json or --csv, got both\n',
      );
  });
});
