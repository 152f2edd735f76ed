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
