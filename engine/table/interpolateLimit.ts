import type { LimitTable } from './limitTable.ts';
import type { LimitEntry } from './makeLimitTable.ts';

type Axis = readonly (readonly [index: number, share: number])[];

/**
 * The limit between the entries of a table, linear along each axis [m/s]; beyond the table, that of its edge. A best guess, where leastLimit of the table
 * errs to the low side.
 */
export function interpolateLimit(table: LimitTable, { slope, descentRate, lean, mass }: LimitEntry): number {
  const { slopes, descentRates, leans, masses, limits } = table;
  let sum = 0;
  for (const [i, a] of between(slopes, slope))
    for (const [j, b] of between(descentRates, descentRate))
      for (const [k, c] of between(leans, lean))
        for (const [l, d] of between(masses, mass)) {
          const row = (i * descentRates.length + j) * leans.length + k;
          sum += a * b * c * d * limits[row * masses.length + l]!;
        }
  return sum;
}

function between(axis: readonly number[], value: number): Axis {
  const above = axis.findIndex((entry) => entry >= value);
  if (above < 0) return [[axis.length - 1, 1]];
  if (above === 0) return [[0, 1]];
  const share = (value - axis[above - 1]!) / (axis[above]! - axis[above - 1]!);
  return [
    [above - 1, 1 - share],
    [above, share],
  ];
}
