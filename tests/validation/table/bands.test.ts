import { describe, expect, it } from 'vitest';
import { seedRandom } from '../../../engine/math/random.ts';
import { shippedLander } from '../../support/touchDown.ts';
import { countBands } from './countBands.ts';
import { arrivalDrawer } from './plausibleArrivals.ts';

/**
 * A sample of what writeBands.ts counts in full, where the table in engine/table/README.md is from: desired falls in less than 1 of 1000, adequate
 * in less than 1 of 100. None of the sample may fall in either.
 */
const SAMPLES = [
  { id: 'trivet', arrivals: 300 },
  { id: 'steeple', arrivals: 120 },
  { id: 'bolster', arrivals: 300 },
] as const;

describe('the bands of the live margin', () => {
  it.each(SAMPLES)(
    '[TA14] keep their word: $id',
    ({ id, arrivals }) => {
      const { desired, adequate, thin, outside } = countBands(
        arrivalDrawer(shippedLander(id), seedRandom(7)),
        arrivals,
      );
      const counts = JSON.stringify({ desired, adequate, thin, outside });
      expect(desired.runs, counts).toBeGreaterThan(5);
      expect(adequate.runs, counts).toBeGreaterThan(3);
      // landers do fall in this sample, where they were told so
      expect(outside.falls, counts).toBeGreaterThan(0);
      expect([desired.falls, adequate.falls], counts).toEqual([0, 0]);
    },
    120_000,
  );
});
