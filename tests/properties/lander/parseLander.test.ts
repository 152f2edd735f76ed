import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { formatLander, massProperties, parseLander, parseLanderText } from '../../../engine/lander/index.ts';
import { LANDER_FILES, mapNumbers, numbersIn, spoiled } from '../../support/landerFile.ts';

const PARAMETERS = { seed: 20_0613, numRuns: 200 };

const files = fc.constantFrom(...Object.values(LANDER_FILES));

describe('the format of a lander', () => {
  it('[LA5] is read back to the last bit for landers with every number a little off', () => {
    let accepted = 0;
    fc.assert(
      fc.property(
        files,
        fc.array(fc.integer({ min: -300, max: 300 }), { minLength: 200, maxLength: 200 }),
        (file, offs) => {
          let index = 0;
          const json = mapNumbers(file, (value, path) => {
            const off = offs[index++ % offs.length] ?? 0;
            return path.at(-1) === 'count' ? value : value * (1 + off / 10_000);
          });
          const first = parseLander(json);
          if (!first.ok) return;
          accepted++;
          const again = parseLanderText(JSON.stringify(formatLander(first.value)));
          expect(again).toEqual(first);
          expect(massProperties(first.value).mass).toBeGreaterThan(0);
        },
      ),
      PARAMETERS,
    );
    expect(accepted).toBeGreaterThan(150);
  });

  it('[LA11] answers any JSON value with a lander or with problems, and never throws', () => {
    fc.assert(
      fc.property(fc.jsonValue({ maxDepth: 6 }), (value) => {
        const result = parseLander(value);
        expect(result.ok || result.error.length > 0).toBe(true);
      }),
      PARAMETERS,
    );
  });

  it('[LA11] answers a file with any value anywhere with a lander or with problems, and never throws', () => {
    let refused = 0;
    fc.assert(
      fc.property(files, fc.nat(), fc.anything(), (file, place, value) => {
        const numbers = numbersIn(file);
        const path = numbers[place % numbers.length]?.[0] ?? [];
        const result = parseLander(spoiled(file, path, value));
        expect(result.ok || result.error.length > 0).toBe(true);
        if (!result.ok) refused++;
      }),
      PARAMETERS,
    );
    expect(refused).toBeGreaterThan(100);
  });

  it('[LA13] answers any text with a lander or with problems, and never throws', () => {
    fc.assert(
      fc.property(fc.oneof(fc.string(), fc.json()), (text) => {
        const result = parseLanderText(text);
        expect(result.ok || result.error.length > 0).toBe(true);
      }),
      PARAMETERS,
    );
  });
});
