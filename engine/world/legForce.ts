import { stickShare, withinCone } from '../touchdown/friction.ts';
import { crushedAfter, elasticForce, yieldForce } from '../touchdown/legCrush.ts';
import { GEAR_ULTIMATE, LEG_DAMPING_RATIO, LEG_DT } from './constants.ts';
import type { Terrain } from './descent.ts';
import { groundHeight } from './ground.ts';
import type { Bulk, Motion } from './motion.ts';
import { hasBottomed, type LegWork, type SectionLander } from './sectionLander.ts';

/**
 * The force of the ground on one foot: the leg is a force element on the hull, its foot has no mass.
 *
 * The foot rests where the crushed leg holds it in the body. Where that spot lies below the plane that spans the ground
 * under the pad, the ground pushes back along its normal with the elastic force of the leg, and along itself with the
 * friction spring. Two limits act by return mapping: the load along the strut never exceeds what the present stage
 * bears (the foot then moves up along the strut for good), and friction never leaves its cone (the spring then lets go).
 *
 *   R·u ≤ F(crushed),   |R·t| ≤ μ·R·n,   R·n ≥ 0
 *
 * R  force on the foot [N]   u  along the strut, foot to hip   n, t  ground normal, and tangent to the right
 *
 * The work done on the leg is F times its shortening and the work of sliding is friction times the way slid, both lost;
 * what the springs hold they give back at most. In the elastic range a damper acts along n and, while the foot sticks,
 * along t; it never adds to crushing and never pulls.
 *
 * One call stands for one LEG_DT. Reads `motion`, writes `work`; the caller computes both legs before it applies either,
 * or the lander would tilt to the side that is applied first.
 */
export function computeLegForce(
  section: SectionLander,
  terrain: Terrain,
  bulk: Bulk,
  motion: Motion,
  cosine: number,
  sine: number,
  work: LegWork,
): void {
  const { leg, halfStance } = section;
  const { law } = leg;
  // where the leg holds its foot, from the center of mass, in the body and in the world
  const axisX = work.side * leg.axis[0];
  const axisY = leg.axis[1];
  const bodyX = work.side * halfStance + axisX * work.crushed;
  const bodyY = axisY * work.crushed - bulk.centerHeight;
  const footX = cosine * bodyX - sine * bodyY;
  const footY = sine * bodyX + cosine * bodyY;
  // the plane that spans the ground under the pad
  const x = motion.x + footX;
  const left = groundHeight(terrain, x - leg.padRadius);
  const right = groundHeight(terrain, x + leg.padRadius);
  const rise = (right - left) / (2 * leg.padRadius);
  const normalY = 1 / Math.sqrt(1 + rise * rise);
  const normalX = -rise * normalY;
  const depth = ((left + right) / 2 - (motion.y + footY)) * normalY;
  if (depth <= 0 || work.gaveWay) {
    release(work);
    return;
  }

  // the foot on the ground, and how the body moves there
  const armX = footX + depth * normalX;
  const armY = footY + depth * normalY;
  const speedX = motion.vx - motion.rate * armY;
  const speedY = motion.vy + motion.rate * armX;
  const closing = -(speedX * normalX + speedY * normalY);
  const sliding = speedX * normalY - speedY * normalX;
  const alongX = cosine * axisX - sine * axisY;
  const alongY = sine * axisX + cosine * axisY;
  const strutNormal = alongX * normalX + alongY * normalY;
  const strutTangent = alongX * normalY - alongY * normalX;

  // what elasticity alone would give
  const friction = terrain.friction;
  const stiffness = law.stiffness;
  let stretch = work.stretch + sliding * LEG_DT;
  let normal = elasticForce(law, hasBottomed(leg, work), depth);
  let tangent = -stiffness * stretch;

  // return to what the stage bears and to the friction cone, in turns: each frees the other a little
  const softening = stiffness * (strutNormal * strutNormal + strutTangent * strutTangent);
  let crushed = work.crushed;
  for (let turn = 0; turn < RETURN_TURNS; turn++) {
    const longer =
      strutNormal > 0 ? crushedAfter(law, crushed, normal * strutNormal + tangent * strutTangent, softening) : crushed;
    const shortened = longer - crushed;
    if (shortened > 0) {
      crushed = longer;
      normal = Math.max(0, normal - stiffness * strutNormal * shortened);
      stretch += strutTangent * shortened;
      tangent = -stiffness * stretch;
    } else if (turn > 0) break;
    const share = stickShare(tangent, friction, normal);
    stretch *= share;
    tangent *= share;
    if (share === 1 && turn > 0) break;
  }

  // damping in the elastic range only
  const damping = 2 * LEG_DAMPING_RATIO * Math.sqrt(stiffness * bulk.mass * 0.5);
  if (crushed === work.crushed) {
    const spare = yieldForce(law, crushed) - (normal * strutNormal + tangent * strutTangent);
    const most = strutNormal > 0 ? Math.max(0, spare) / strutNormal : Infinity;
    normal = Math.max(0, normal + Math.min(damping * closing, most));
    tangent = withinCone(tangent - damping * sliding, friction, normal);
  }

  work.crushed = crushed;
  work.stretch = stretch;
  work.inContact = true;
  work.touched = true;
  work.load = normal * strutNormal + tangent * strutTangent;
  if (work.load > GEAR_ULTIMATE * lastForce(law.stages)) {
    work.gaveWay = true;
    release(work);
    return;
  }
  work.forceX = normal * normalX + tangent * normalY;
  work.forceY = normal * normalY - tangent * normalX;
  work.moment = armX * work.forceY - armY * work.forceX;
}

/**
 * Turns of the two return mappings [-]. Each takes at least a third off the excess at any friction up to 1; after eight
 * less than 4 % of a first excess is left, which the next LEG_DT takes up.
 */
const RETURN_TURNS = 8;

function lastForce(stages: readonly { readonly force: number }[]): number {
  return stages[stages.length - 1]?.force ?? 0;
}

function release(work: LegWork): void {
  work.inContact = false;
  work.stretch = 0;
  work.load = 0;
  work.forceX = 0;
  work.forceY = 0;
  work.moment = 0;
}
