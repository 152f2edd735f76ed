import { seedRandom } from '../../../engine/math/index.ts';
import {
  prepareTouchdown,
  tipLimit,
  type TouchdownCase,
  type TouchdownOptions,
} from '../../../engine/touchdown/index.ts';
import { drawConditions, MOON, plane, SHIPPED, shippedLander, touchDown } from '../../support/touchDown.ts';
import { rollingGround } from '../../support/dropLander.ts';
import { drawWildTouchdown } from '../../support/wildTouchdown.ts';
import { digest } from './digest.ts';

/** Hashes of whole results, by what was simulated. */
export function goldenTouchdowns(): Readonly<Record<string, string>> {
  const wild = drawn(30, 5, drawWildTouchdown);
  const shipped = SHIPPED.map((id): readonly [string, string] => {
    const cases = drawn(12, 7, (random) => ({ lander: shippedLander(id), ...drawConditions(random) }));
    return [`${id}, on slopes, rocks and soils`, hashOf(cases, { ledger: true, historyEvery: 64 })];
  });
  const kept = SHIPPED.map((id): readonly [string, string] => {
    const terrain = rollingGround();
    const cases = drawn(8, 9, (random) => {
      const { ground, ...conditions } = drawConditions(random);
      return {
        lander: shippedLander(id),
        ...conditions,
        ground: { ...ground, underPad: [], shape: { kind: 'profile', terrain } as const },
        thrust: { thrust: 2000, cutoffDelay: 0.4, timeConstant: 0.3 },
        hold: { duration: 1.5 },
      };
    });
    return [`${id}, over hills, thrust and thrusters on`, hashOf(cases)];
  });
  const limits = SHIPPED.map((id): readonly [string, string] => [`${id}, tip limits`, limitsOf(id)]);
  return Object.fromEntries([
    ['landers that nobody would build', hashOf(wild)],
    ['the same, for tipping only', hashOf(wild, { only: 'tipping' })],
    ['the same, for tipping and gear', hashOf(wild, { only: 'tipping and gear' })],
    ['the same, simulated on', hashOf(wild, { stopWhenDecided: false, timeLimit: 8, historyEvery: 100 })],
    ...shipped,
    ...kept,
    ...limits,
  ]);
}

function drawn<Case>(
  count: number,
  seed: number,
  draw: (random: ReturnType<typeof seedRandom>) => Case,
): readonly Case[] {
  const random = seedRandom(seed);
  return Array.from({ length: count }, () => draw(random));
}

function hashOf(cases: readonly TouchdownCase[], options: TouchdownOptions = {}): string {
  return digest(cases.map((touchdown) => touchDown(touchdown, options)));
}

function limitsOf(id: (typeof SHIPPED)[number]): string {
  const prepared = prepareTouchdown(shippedLander(id));
  if (!prepared.ok) throw new Error(`${id} can be simulated`);
  const arrivals = [0, 0.05, 0.14].flatMap((slope) =>
    [0, 0.3].map((yaw) => ({
      gravity: MOON,
      ground: plane(0.7, slope),
      state: { horizontalSpeed: 0, descentRate: 1 + yaw, yaw },
    })),
  );
  return digest(arrivals.map((arrival) => tipLimit(prepared.value, arrival, { strips: true })));
}
