import type { Soil } from '../../engine/ground/index.ts';
import type { Lander } from '../../engine/lander/lander.ts';
import { nextUniform, type RandomState } from '../../engine/math/random.ts';
import { simulateTouchdown } from '../../engine/touchdown/index.ts';
import type {
  TouchdownCase,
  TouchdownConditions,
  TouchdownOptions,
  TouchdownResult,
} from '../../engine/touchdown/index.ts';
import { findLander } from '../../levels/landers.ts';

export const MOON = 1.62422;

/** A touchdown that is expected to be accepted. */
export function touchDown(touchdown: TouchdownCase, options: TouchdownOptions = {}): TouchdownResult {
  const result = simulateTouchdown(touchdown, options);
  if (!result.ok) throw new Error(JSON.stringify(result.error));
  return result.value;
}

/** Level ground, or a plane falling toward `fallAzimuth`. */
export function plane(
  friction: number,
  slope = 0,
  fallAzimuth = 0,
): { readonly shape: { kind: 'plane'; slope: number; fallAzimuth: number }; readonly friction: number } {
  return { shape: { kind: 'plane', slope, fallAzimuth }, friction };
}

/** Those that come with the program. */
export const SHIPPED = ['trivet', 'steeple', 'bolster'] as const;

/** A lander that comes with the program. */
export function shippedLander(id: (typeof SHIPPED)[number]): Lander {
  const lander = findLander(id);
  if (lander === undefined) throw new Error(`no lander ${id}`);
  return lander;
}

/** Conditions drawn at random within what a touchdown may bring; the same state draws the same. */
export function drawConditions(random: RandomState): TouchdownConditions {
  const between = (low: number, high: number): number => low + (high - low) * nextUniform(random);
  const soils: readonly Soil[] = [
    { kind: 'rigid' },
    { kind: 'bearing', stiffness: 2e6, strength: 3e4 },
    { kind: 'bekker', cohesive: 1400, frictional: 820_000, exponent: 1.1, stiffness: 3e6 },
  ];
  const pick = <Value>(values: readonly Value[]): Value => values[Math.floor(between(0, values.length))]!;
  return {
    gravity: pick([1.62422, 3.72787, 9.80665]),
    ground: {
      shape: { kind: 'plane', slope: between(0, 0.3), fallAzimuth: between(0, 6) },
      friction: between(0.1, 1.2),
      soil: pick(soils),
      underPad: pick([[], [{ leg: 1, height: 0.3 }], [{ leg: 0, height: -0.2 }]]),
    },
    state: {
      horizontalSpeed: between(-1, 4),
      descentRate: between(0.3, 3.5),
      travelAzimuth: between(0, 6),
      yaw: between(0, 6),
      pitch: between(-0.2, 0.2),
      roll: between(-0.2, 0.2),
      rates: [between(-0.2, 0.2), between(-0.2, 0.2), between(-0.2, 0.2)],
      height: pick([0, 0.3]),
    },
  };
}
