import type { TouchdownKernel } from './kernel.ts';
import {
  FOOT_BOTTOMED,
  FOOT_BOTTOMED_STIFFNESS,
  FOOT_CRUSH,
  FOUND_DAMPING_WORK,
  FOOT_FOLDS,
  FOOT_KN,
  FOOT_KT,
  FOOT_LATERAL_STIFFNESS,
  FOOT_LEG,
  FOOT_LEG_STIFFNESS,
  FOOT_LEVEL,
  FOOT_STAGE,
  FOOT_STAGE_END,
  FOOT_U1,
  FOOT_U2,
  FOOT_UN,
} from './layout.ts';

/** Moves a leg on to its next stage; after the last one it has no crush limit. Lengths without force limit stay elastic. */
export function nextStage(kernel: TouchdownKernel, o: number): void {
  const { feet } = kernel;
  if (feet[o + FOOT_FOLDS]! > 0) {
    // folded away: no ground ever reaches its pad again
    feet[o + FOOT_CRUSH] = Infinity;
    feet[o + FOOT_LEVEL] = -Infinity;
    return;
  }
  const stages = kernel.stages[feet[o + FOOT_LEG]!]!;
  const next = feet[o + FOOT_STAGE]! + 1;
  feet[o + FOOT_STAGE] = next;
  if (2 * next < stages.length) {
    feet[o + FOOT_CRUSH] = stages[2 * next]!;
    feet[o + FOOT_STAGE_END] = feet[o + FOOT_STAGE_END]! + stages[2 * next + 1]!;
  } else {
    feet[o + FOOT_CRUSH] = Infinity;
    feet[o + FOOT_BOTTOMED] = 1;
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
  const bottomed = feet[o + FOOT_BOTTOMED_STIFFNESS]!;
  const kn = 1 / (1 / feet[o + FOOT_KN]! + 1 / bottomed - 1 / feet[o + FOOT_LEG_STIFFNESS]!);
  // a lateral stage stiffer than the bottomed leg stays as it is: to soften at unchanged force would make energy
  const kt = Math.max(
    feet[o + FOOT_KT]!,
    1 / (1 / feet[o + FOOT_KT]! + 1 / bottomed - 1 / feet[o + FOOT_LATERAL_STIFFNESS]!),
  );
  const before = feet[o + FOOT_UN]!;
  const [u1, u2] = [feet[o + FOOT_U1]!, feet[o + FOOT_U2]!];
  const shareN = feet[o + FOOT_KN]! / kn;
  const shareT = feet[o + FOOT_KT]! / kt;
  const lost =
    feet[o + FOOT_KN]! * before * before * (1 - shareN) + feet[o + FOOT_KT]! * (u1 * u1 + u2 * u2) * (1 - shareT);
  found[FOUND_DAMPING_WORK] = found[FOUND_DAMPING_WORK]! + lost / 2;
  feet[o + FOOT_UN] = before * shareN;
  feet[o + FOOT_U1] = u1 * shareT;
  feet[o + FOOT_U2] = u2 * shareT;
  feet[o + FOOT_KN] = kn;
  feet[o + FOOT_KT] = kt;
  return before - feet[o + FOOT_UN]!;
}
