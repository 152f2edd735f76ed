import { stickShare, withinCone } from '../touchdown/friction.ts';
import { crushedAfter, elasticForce, yieldForce, type CrushLaw } from '../touchdown/legCrush.ts';
import { GEAR_ULTIMATE, LEG_DAMPING_RATIO, LEG_DT } from './constants.ts';
import type { Terrain } from './descent.ts';
import { groundHeight } from './ground.ts';
import type { Bulk, Motion } from './motion.ts';
import { hasBottomed, type LegWork, type SectionLander } from './sectionLander.ts';

/**
 * Turns of the two return mappings. Each takes at least a third off the excess at any friction up to 1; after eight less
 * than 4 % of a first excess is left, which the next LEG_DT takes up.
 */
const RETURN_TURNS = 8;

/** Sets where a foot stands and how it moves, for a body turned by the angle of this cosine and sine. */
export function placeFoot(
  { leg, halfStance }: SectionLander,
  terrain: Terrain,
  centerHeight: number,
  motion: Motion,
  cosine: number,
  sine: number,
  work: LegWork,
): void {
  const { stance } = work;
  const axisX = work.side * leg.axis[0];
  const axisY = leg.axis[1];
  const bodyX = work.side * halfStance + axisX * work.crushed;
  const bodyY = axisY * work.crushed - centerHeight;
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
  // the foot on it, and how the body moves there
  const armX = footX + depth * normalX;
  const armY = footY + depth * normalY;
  const speedX = motion.vx - motion.rate * armY;
  const speedY = motion.vy + motion.rate * armX;
  const strutX = cosine * axisX - sine * axisY;
  const strutY = sine * axisX + cosine * axisY;
  stance.depth = depth;
  stance.normalX = normalX;
  stance.normalY = normalY;
  stance.armX = armX;
  stance.armY = armY;
  stance.closing = -(speedX * normalX + speedY * normalY);
  stance.sliding = speedX * normalY - speedY * normalX;
  stance.strutNormal = strutX * normalX + strutY * normalY;
  stance.strutTangent = strutX * normalY - strutY * normalX;
}

/**
 * The force of the ground on a foot placed by `placeFoot`, over one LEG_DT. The leg is a force element on the hull; its
 * foot has no mass.
 *
 * Where the foot, as the crushed leg holds it, lies below the ground, the ground pushes back along its normal with the
 * elastic force of the leg and along itself with the friction spring. Two limits act by return mapping: the load along
 * the strut never exceeds what the present stage bears (the foot then moves up along the strut for good), and friction
 * never leaves its cone (the spring then lets go).
 *
 *   R·u ≤ F(crushed),   |R·t| ≤ μ·R·n,   R·n ≥ 0
 *
 * R  force on the foot [N]     u  along the strut, foot to hip     n, t  normal of the ground, and tangent to the right
 *
 * The work done on the leg is F times its shortening and the work of sliding is friction times the way slid: both are
 * lost, and the springs give back at most what they took. In the elastic range a damper acts along n and, as long as the
 * cone allows, along t; it never adds to crushing and never pulls.
 */
export function loadFoot({ leg }: SectionLander, friction: number, bulk: Bulk, work: LegWork): void {
  const { stance } = work;
  const { depth, strutNormal, strutTangent, normalX, normalY } = stance;
  if (depth <= 0 || work.gaveWay) {
    release(work);
    return;
  }
  const before = work.crushed;
  work.stretch += stance.sliding * LEG_DT;
  let normal = returnToLimits(leg.law, hasBottomed(leg, work), friction, work);
  let tangent = -leg.law.stiffness * work.stretch;
  if (work.crushed === before) {
    const damping = 2 * LEG_DAMPING_RATIO * Math.sqrt(leg.law.stiffness * bulk.mass * 0.5);
    const spare = yieldForce(leg.law, before) - (normal * strutNormal + tangent * strutTangent);
    const most = strutNormal > 0 ? Math.max(0, spare) / strutNormal : Infinity;
    normal = Math.max(0, normal + Math.min(damping * stance.closing, most));
    tangent = withinCone(tangent - damping * stance.sliding, friction, normal);
  }
  work.load = normal * strutNormal + tangent * strutTangent;
  if (work.load > GEAR_ULTIMATE * lastForce(leg.law)) {
    work.gaveWay = true;
    release(work);
    return;
  }
  work.inContact = true;
  work.touched = true;
  work.forceX = normal * normalX + tangent * normalY;
  work.forceY = normal * normalY - tangent * normalX;
  work.moment = stance.armX * work.forceY - stance.armY * work.forceX;
}

/**
 * Crushes the leg and lets the friction spring slip until both limits hold, in turns: each frees the other a little.
 * Returns the elastic normal force that is left [N].
 */
function returnToLimits(law: CrushLaw, isBottomed: boolean, friction: number, work: LegWork): number {
  const { depth, strutNormal, strutTangent } = work.stance;
  const { stiffness } = law;
  // by how much the load along the strut falls for each meter that the foot moves up along it
  const softening = stiffness * (strutNormal * strutNormal + strutTangent * strutTangent);
  let normal = elasticForce(law, isBottomed, depth);
  for (let turn = 0; turn < RETURN_TURNS; turn++) {
    const load = normal * strutNormal - stiffness * work.stretch * strutTangent;
    const shortened = strutNormal > 0 ? crushedAfter(law, work.crushed, load, softening) - work.crushed : 0;
    if (shortened > 0) {
      work.crushed += shortened;
      normal = Math.max(0, normal - stiffness * strutNormal * shortened);
      work.stretch += strutTangent * shortened;
    } else if (turn > 0) return normal;
    work.stretch *= stickShare(stiffness * work.stretch, friction, normal);
  }
  return normal;
}

function lastForce(law: CrushLaw): number {
  return law.stages[law.stages.length - 1]?.force ?? 0;
}

function release(work: LegWork): void {
  work.inContact = false;
  work.stretch = 0;
  work.load = 0;
  work.forceX = 0;
  work.forceY = 0;
  work.moment = 0;
}
