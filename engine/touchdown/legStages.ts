import type { TouchdownKernel } from './kernel.ts';
import {
  BOTTOMED,
  BOTTOMED_STIFFNESS,
  CRUSH,
  DAMPING_WORK,
  FOLDS,
  KN,
  KT,
  LATERAL_STIFFNESS,
  LEG,
  LEG_STIFFNESS,
  LEVEL,
  STAGE,
  STAGE_END,
  U1,
  U2,
  UN,
} from './layout.ts';

/** Moves a leg on to its next stage; after the last one it has no crush limit. Lengths without force limit stay elastic. */
export function nextStage(kernel: TouchdownKernel, o: number): void {
  const { feet } = kernel;
  if (feet[o + FOLDS]! > 0) {
    // folded away: no ground ever reaches its pad again
    feet[o + CRUSH] = Infinity;
    feet[o + LEVEL] = -Infinity;
    return;
  }
  const stages = kernel.stages[feet[o + LEG]!]!;
  const next = feet[o + STAGE]! + 1;
  feet[o + STAGE] = next;
  if (2 * next < stages.length) {
    feet[o + CRUSH] = stages[2 * next]!;
    feet[o + STAGE_END] = feet[o + STAGE_END]! + stages[2 * next + 1]!;
  } else {
    feet[o + CRUSH] = Infinity;
    feet[o + BOTTOMED] = 1;
  }
}

/**
 * Gives a bottomed leg its bottomed stiffness at unchanged force: u' = k u / k', so the elastic energy k u^2/2 falls to
 * k/k' of itself. Returns by how much the unloaded pad has moved toward the surface normal [m].
 *
 *   1/k = 1/k_leg + 1/k_soil  =>  1/k' = 1/k + 1/k_bottomed - 1/k_leg                  series of springs
 */
export function restiffen(kernel: TouchdownKernel, o: number): number {
  const { feet, found } = kernel;
  const bottomed = feet[o + BOTTOMED_STIFFNESS]!;
  const kn = 1 / (1 / feet[o + KN]! + 1 / bottomed - 1 / feet[o + LEG_STIFFNESS]!);
  // a lateral stage stiffer than the bottomed leg stays as it is: to soften at unchanged force would make energy
  const kt = Math.max(feet[o + KT]!, 1 / (1 / feet[o + KT]! + 1 / bottomed - 1 / feet[o + LATERAL_STIFFNESS]!));
  const before = feet[o + UN]!;
  const [u1, u2] = [feet[o + U1]!, feet[o + U2]!];
  const shareN = feet[o + KN]! / kn;
  const shareT = feet[o + KT]! / kt;
  const lost = feet[o + KN]! * before * before * (1 - shareN) + feet[o + KT]! * (u1 * u1 + u2 * u2) * (1 - shareT);
  found[DAMPING_WORK] = found[DAMPING_WORK]! + lost / 2;
  feet[o + UN] = before * shareN;
  feet[o + U1] = u1 * shareT;
  feet[o + U2] = u2 * shareT;
  feet[o + KN] = kn;
  feet[o + KT] = kt;
  return before - feet[o + UN]!;
}
