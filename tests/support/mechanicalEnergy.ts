import type { Descent } from '../../engine/world/index.ts';
import { elasticForce } from '../../engine/touchdown/legCrush.ts';
import { hasBottomed } from '../../engine/world/sectionLander.ts';
import { placeFoot } from '../../engine/world/legForce.ts';

/** Kinetic and potential energy of the lander, and what its legs hold in their springs [J]. */
export function mechanicalEnergy(descent: Descent): number {
  const { motion, bulk, setup, section } = descent;
  const { vx, vy, rate, y, angle } = motion;
  const kinetic = 0.5 * bulk.mass * (vx * vx + vy * vy) + 0.5 * bulk.inertia * rate * rate;
  const law = section.leg.law;
  let elastic = 0;
  for (const work of descent.legs) {
    if (work.gaveWay) continue;
    placeFoot(section, setup.terrain, bulk.centerHeight, motion, Math.cos(angle), Math.sin(angle), work);
    const { depth } = work.stance;
    if (depth <= 0) continue;
    const force = elasticForce(law, hasBottomed(section.leg, work), depth);
    const last = law.stages.at(-1)?.force ?? 0;
    // the area below the force: one triangle, or a triangle and what lies beyond the kink
    elastic +=
      force <= last || !hasBottomed(section.leg, work)
        ? 0.5 * force * depth
        : (0.5 * last * last) / law.stiffness + 0.5 * (last + force) * (depth - last / law.stiffness);
    elastic += 0.5 * law.stiffness * (work.stretch * work.stretch + work.drag * work.drag);
  }
  return kinetic + bulk.mass * setup.gravity * y + elastic;
}
