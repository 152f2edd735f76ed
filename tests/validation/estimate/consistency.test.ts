import { describe, expect, it } from 'vitest';
import { STATES } from '../../../engine/estimate/state.ts';
import type { Source } from '../../../engine/sensors/index.ts';
import { meanSquareBounds } from '../../support/chiSquare.ts';
import { normalizedSquare } from '../../support/covarianceChecks.ts';
import { believe, errorOf, flyTruly, type Belief, type TrueDescent } from '../../support/believedDescent.ts';
import { LEVEL, livelyDescent } from '../../support/kinematicTruth.ts';
import { TRUE_MAP } from '../../support/plainEstimate.ts';

/** A filter is consistent when its errors are as large as it says: normalized by its covariance, their squares follow chi-square [Groves2013]. */
const SEEDS = 200;
const FREEDOM = 8;
/** Before this the start still shows in innovations that are not yet white [tick]. */
const SETTLED = 200;
const CHECKED = ['altimeter', 'velocityRadar', 'attitudeReference', 'surfaceCamera'] as const;

interface Squares {
  /** Normalized errors squared at each watched tick, one a seed. */
  readonly errors: Map<number, number[]>;
  /** Mean and count of normalized innovations squared, by source and channel. */
  readonly innovations: Map<string, { sum: number; count: number }>;
}

function collect(runs: readonly { descent: TrueDescent; belief: Belief }[], watched: readonly number[]): Squares {
  const errors = new Map<number, number[]>(watched.map((tick) => [tick, []]));
  const innovations = new Map<string, { sum: number; count: number }>();
  for (const { descent, belief } of runs)
    believe(descent, belief, (moment) => {
      const { estimate, readings, state } = moment;
      for (const source of CHECKED) {
        const { arrivedTick, isValid } = readings[source];
        if (state.tick >= SETTLED && arrivedTick === state.tick && isValid)
          add(innovations, source, estimate.tracks[source]);
      }
      errors.get(state.tick)?.push(normalizedSquare(errorOf(moment, descent.terrain), estimate.covariance, STATES));
    });
  return { errors, innovations };
}

function add(
  to: Squares['innovations'],
  source: Source,
  { innovation, deviation }: { readonly innovation: readonly number[]; readonly deviation: readonly number[] },
): void {
  for (const [channel, value] of innovation.entries()) {
    const name = `${source} ${channel}`;
    const known = to.get(name) ?? { sum: 0, count: 0 };
    to.set(name, { sum: known.sum + (value / deviation[channel]!) ** 2, count: known.count + 1 });
  }
}

function meanOf(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0) / values.length;
}

// the camera rounds to half a meter a second, more than its noise: its error is no normal one, and is held to 15 %
function innovationBounds(name: string, count: number): readonly [number, number] {
  return name.startsWith('surfaceCamera') ? [0.85, 1.15] : meanSquareBounds(count);
}

describe('the estimate over a right map, 200 seeds', () => {
  const descent = { truth: livelyDescent(1500), terrain: LEVEL };
  const runs = Array.from({ length: SEEDS }, (_, seed) => ({ descent, belief: { seed, map: TRUE_MAP } }));
  const watched = [60, 300, 900, 1500];
  const { errors, innovations } = collect(runs, watched);

  it.each(watched)('[ES2] errs as it says, at tick %d', (tick) => {
    const [low, high] = meanSquareBounds(SEEDS, FREEDOM);
    expect(errors.get(tick)!.length).toBe(SEEDS);
    expect(meanOf(errors.get(tick)!)).toBeGreaterThan(low);
    expect(meanOf(errors.get(tick)!)).toBeLessThan(high);
  });

  it('[ES2] is surprised as often as it says, by every channel', () => {
    expect([...innovations.keys()].length).toBe(5);
    for (const [name, { sum, count }] of innovations) {
      const [low, high] = innovationBounds(name, count);
      expect(count, name).toBeGreaterThan(8000);
      expect(sum / count, name).toBeGreaterThan(low);
      expect(sum / count, name).toBeLessThan(high);
    }
  });
});

describe('the estimate over the ground of 4 sites, 5 grounds each, with 10 drawn maps each', () => {
  const sites = ['saddlers-bench', 'tallow-hollow', 'ravel-bank', 'coombe-ledge'];
  const runs = sites.flatMap((site) => {
    const grounds = [1, 2, 3, 4, 5].map((ground) => flyTruly(site, ground));
    return grounds.flatMap((descent, ground) =>
      Array.from({ length: 10 }, (_, draw) => ({ descent, belief: { seed: 1000 + 10 * ground + draw } })),
    );
  });
  const watched = [300, 600, 900, 1200];
  const { errors, innovations } = collect(runs, watched);

  // the error of a map is no random walk: what is taken for one is meant to err to the large side, and to no more than half
  it.each(watched)('[ES2] errs by no more than it says, and not by far less, at tick %d', (tick) => {
    const [, high] = meanSquareBounds(SEEDS, FREEDOM);
    expect(errors.get(tick)!.length).toBe(SEEDS);
    expect(meanOf(errors.get(tick)!)).toBeLessThan(high);
    expect(meanOf(errors.get(tick)!)).toBeGreaterThan(FREEDOM / 2);
  });

  it('[ES2] is surprised as often as it says', () => {
    for (const [name, { sum, count }] of innovations) {
      const [, high] = innovationBounds(name, count);
      expect(sum / count, name).toBeLessThan(high);
      expect(sum / count, name).toBeGreaterThan(0.8);
    }
  });
});
