import { simulateTouchdown } from '../../engine/touchdown/index.ts';
import type { TouchdownCase, TouchdownOptions, TouchdownResult } from '../../engine/touchdown/index.ts';

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

/** Largest speed of an interval at which `falls` is still false: bisection; the ends are asserted. */
export function bisectLimit(low: number, high: number, turns: number, falls: (speed: number) => boolean): number {
  if (falls(low)) throw new Error(`falls at the low end, ${low}`);
  if (!falls(high)) throw new Error(`stays up at the high end, ${high}`);
  for (let turn = 0; turn < turns; turn++) {
    const middle = (low + high) / 2;
    if (falls(middle)) high = middle;
    else low = middle;
  }
  return (low + high) / 2;
}
