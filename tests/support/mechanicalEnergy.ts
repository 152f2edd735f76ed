import {
  FOOT_SIZE,
  FOOT_KN,
  FOOT_KT,
  FOOT_TOUCHING,
  FOOT_U1,
  FOOT_U2,
  FOOT_UN,
} from '../../engine/touchdown/layout.ts';
import type { Descent } from '../../engine/world/index.ts';

/** Kinetic and potential energy of the lander, and what its legs hold in their springs [J]. */
export function mechanicalEnergy({ motion, bulk, setup, feet }: Descent): number {
  const { vx, vy, rate, y } = motion;
  const kinetic = 0.5 * bulk.mass * (vx * vx + vy * vy) + 0.5 * bulk.inertia * rate * rate;
  const records = feet.kernel.feet;
  let elastic = 0;
  for (let leg = 0; leg < feet.count; leg++) {
    const at = (field: number): number => records[leg * FOOT_SIZE + field]!;
    if (at(FOOT_TOUCHING) === 0 || at(FOOT_UN) <= 0) continue;
    elastic += 0.5 * at(FOOT_KN) * at(FOOT_UN) ** 2 + 0.5 * at(FOOT_KT) * (at(FOOT_U1) ** 2 + at(FOOT_U2) ** 2);
  }
  return kinetic + bulk.mass * setup.gravity * y + elastic;
}
