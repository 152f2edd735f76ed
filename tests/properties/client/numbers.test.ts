import * as fc from 'fast-check';
import { afterEach, describe, expect, it } from 'vitest';
import { UNIT_SYSTEMS, type UnitSystem } from '../../../client/settings/settings.ts';
import { changeSettings } from '../../../client/settings/store.ts';
import {
  about,
  acceleration,
  bare,
  degrees,
  distance,
  mass,
  percent,
  speed,
  within,
} from '../../../client/text/numbers.ts';

/** By definition: the international foot [m] and the avoirdupois pound [kg]. */
const FOOT = 0.3048;
const POUND = 0.45359237;

/** Size of each unit that may stand behind a figure, in SI. */
const SIZES: Readonly<Record<string, number>> = {
  m: 1,
  'm/s': 1,
  'm/s²': 1,
  kg: 1,
  ft: FOOT,
  'ft/s': FOOT,
  'ft/s²': FOOT,
  lb: POUND,
  '%': 0.01,
  '°': Math.PI / 180,
};

/** Signs that may not stand in the text of the one system or the other. */
const FOREIGN: Readonly<Record<UnitSystem, RegExp>> = { si: /ft|lb/, us: /m|kg/ };

const FORMATS: readonly (readonly [name: string, write: (value: number) => string])[] = [
  ['distance', (value) => distance(value)],
  ['distance, whole', (value) => distance(value, 0)],
  ['within', within],
  ['speed', (value) => speed(value)],
  ['speed, one figure', (value) => speed(value, 1)],
  ['mass', mass],
  ['acceleration', acceleration],
  ['degrees', (value) => degrees(value)],
  ['degrees, whole', (value) => degrees(value, 0)],
  ['percent', percent],
];

const RUNS = { seed: 271, numRuns: 300 };
const quantity = fc.double({ min: -20_000, max: 20_000, noNaN: true });

/** What a text says in SI, and half of its last shown digit. */
function readBack(text: string): { readonly value: number; readonly half: number } {
  const found = /^±?\s*([−]?)(\d+(?:\.(\d+))?)\s*(\S+)$/u.exec(text);
  if (found === null) throw new Error(`not a number with a unit: ${text}`);
  const [, minus, figure, after = '', sign = ''] = found;
  const size = SIZES[sign];
  if (size === undefined) throw new Error(`not a unit: ${sign}`);
  return { value: (minus === '' ? 1 : -1) * Number(figure) * size, half: 0.5 * 10 ** -after.length * size };
}

/** How far a text is from a value, in halves of its last digit; rounding of the conversion may add a little. */
function halvesOff(text: string, value: number): number {
  const read = readBack(text);
  return (Math.abs(read.value - value) - 1e-9 * Math.abs(value)) / read.half;
}

/** Most that a rounded figure may be off, in halves of its last digit. */
const ROUNDED = 1 + 1e-9;

afterEach(() => changeSettings({ units: 'si' }));

describe.each(UNIT_SYSTEMS)('a number on the page in %s units', (units) => {
  it.each(FORMATS)('reads back as what it was, within half of its last digit: %s', (_, write) => {
    changeSettings({ units });
    fc.assert(
      fc.property(quantity, (value) => {
        const text = write(value);
        expect(text).not.toMatch(FOREIGN[units]);
        expect(halvesOff(text, value)).toBeLessThanOrEqual(ROUNDED);
      }),
      RUNS,
    );
  });

  it('that is known only roughly reads back as well, and so does how roughly', () => {
    changeSettings({ units });
    fc.assert(
      fc.property(quantity, fc.double({ min: 0, max: 500, noNaN: true }), (value, reach) => {
        const [middle = '', off = ''] = about(value, reach).split(' ± ');
        const sign = off.replace(/^[\d.]+\s*/, '');
        expect(halvesOff(`${middle} ${sign}`, value)).toBeLessThanOrEqual(ROUNDED);
        expect(halvesOff(off, reach)).toBeLessThanOrEqual(ROUNDED);
      }),
      RUNS,
    );
  });

  it('that stands before its unit is in that of its neighbor', () => {
    changeSettings({ units });
    const sign = speed(1).replace(/^[\d.]+\s*/, '');
    fc.assert(
      fc.property(quantity, (value) => {
        expect(halvesOff(`${bare('speed', value)} ${sign}`, value)).toBeLessThanOrEqual(ROUNDED);
      }),
      RUNS,
    );
  });
});
