import { simulateTouchdown, type Lander, type LegCondition } from '../../engine/index.ts';
import { DEFAULT_FRICTION } from './groundOptions.ts';

/** A descent straight down, to see whether the gear bears what the closed form leaves to it. */
export interface GearQuestion {
  readonly lander: Lander;
  readonly gravity: number;
  /** [rad] */
  readonly slope: number;
  readonly descentRate: number | undefined;
  /** Indices of legs that are gone. */
  readonly missing: readonly number[];
}

/** A warning when a simulated touchdown at that descent rate, without any drift, already uses up a leg. */
export function gearNote({ lander, gravity, slope, descentRate, missing }: GearQuestion): string | undefined {
  if (descentRate === undefined || descentRate === 0) return undefined;
  const found = simulateTouchdown({
    lander,
    gravity,
    ground: { shape: { kind: 'plane', slope: Math.abs(slope) }, friction: DEFAULT_FRICTION },
    state: { horizontalSpeed: 0, descentRate },
    legs: missing.map((leg): LegCondition => ({ leg, kind: 'missing' })),
  });
  if (!found.ok || !found.value.limitsHit.includes('crush exhausted')) return undefined;
  return `At ${descentRate} m/s down a leg is used up even without drift, so these limits do not hold: see kilter touchdown.`;
}
