import { stickShare, withinCone } from '../touchdown/friction.ts';
import { crushedAfter, elasticForce, yieldForce, type CrushLaw } from '../touchdown/legCrush.ts';
import { GEAR_ULTIMATE, LEG_DAMPING_RATIO, LEG_DT } from './constants.ts';
import { hypot2 } from '../math/exponential.ts';
import type { Terrain } from './descent.ts';
import { groundHeight } from './ground.ts';
import type { Bulk, Motion } from './motion.ts';
import { hasBottomed, type LegWork, type SectionLander, type SectionLeg } from './sectionLander.ts';

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
  const axisX = work.side * leg.strut[0];
  const axisY = leg.strut[1];
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
 *   R·u ≤ F(crushed),   |R − (R·n)n| ≤ μ·R·n,   R·n ≥ 0
 *
 * R  force on the foot [N]     u  along the strut, foot to hip     n  normal of the ground
 *
 * The work done on the leg is F times its shortening and the work of sliding is friction times the way slid: both are
 * lost, and the springs give back at most what they took. In the elastic range a damper acts along n and, as long as the
 * cone allows, along the ground; it never adds to crushing and never pulls.
 */
export function loadFoot({ leg }: SectionLander, friction: number, bulk: Bulk, work: LegWork): void {
  const { stance } = work;
  if (stance.depth <= 0 || work.gaveWay) {
    release(work);
    return;
  }
  const { stiffness } = leg.law;
  work.stretch += stance.sliding * LEG_DT;
  let normal = elasticForce(leg.law, hasBottomed(leg, work), stance.depth);
  const spare = spareForce(leg, normal, work);
  let tangent = 0;
  if (spare < 0) {
    normal = crush(leg, normal, friction, work);
    tangent = -stiffness * work.stretch;
  } else {
    const damping = 2 * LEG_DAMPING_RATIO * Math.sqrt(stiffness * bulk.mass * 0.5);
    normal = Math.max(0, normal + Math.min(damping * stance.closing, spare));
    slip(leg, friction, normal, work);
    const slowed = -stiffness * work.stretch - damping * stance.sliding;
    tangent = withinCone(slowed, coneLeft(leg, friction, normal, work));
  }
  work.load = strutLoad(leg, normal, tangent, work);
  if (work.load > GEAR_ULTIMATE * lastForce(leg.law)) {
    work.gaveWay = true;
    release(work);
    return;
  }
  work.inContact = true;
  work.touched = true;
  work.forceX = normal * stance.normalX + tangent * stance.normalY;
  work.forceY = normal * stance.normalY - tangent * stance.normalX;
  work.moment = stance.armX * work.forceY - stance.armY * work.forceX;
}

/**
 * Crushes the leg and lets the friction spring slip until both limits hold, in turns: each frees the other a little.
 * Returns the normal force that is left [N].
 */
function crush(leg: SectionLeg, elasticNormal: number, friction: number, work: LegWork): number {
  const { law, strut } = leg;
  const { stiffness } = law;
  const { strutNormal, strutTangent } = work.stance;
  let normal = elasticNormal;
  for (let turn = 0; turn < RETURN_TURNS; turn++) {
    const load = strutLoad(leg, normal, -stiffness * work.stretch, work);
    // the foot moves along the strut, a unit vector, against springs that are equally stiff to all sides
    const shortened = crushedAfter(law, work.crushed, load, stiffness) - work.crushed;
    if (shortened <= 0) return normal;
    work.crushed += shortened;
    normal = Math.max(0, normal - stiffness * strutNormal * shortened);
    work.stretch += strutTangent * shortened;
    work.drag += strut[2] * shortened;
    slip(leg, friction, normal, work);
  }
  return normal;
}

/** Lets the friction spring go as far as it leaves the cone. */
function slip({ law }: SectionLeg, friction: number, normal: number, work: LegWork): void {
  const share = stickShare(law.stiffness * hypot2(work.stretch, work.drag), friction, normal);
  work.stretch *= share;
  work.drag *= share;
}

/** Load along the strut [N]. */
function strutLoad({ law, strut }: SectionLeg, normal: number, tangent: number, { stance, drag }: LegWork): number {
  return normal * stance.strutNormal + tangent * stance.strutTangent - law.stiffness * drag * strut[2];
}

/**
 * How much more normal force the present stage bears [N]; negative when it must crush, Infinity when it cannot: a strut that
 * points down into the ground is not pressed, a used-up one bears anything.
 */
function spareForce(leg: SectionLeg, normal: number, work: LegWork): number {
  const { strutNormal } = work.stance;
  if (strutNormal <= 0) return Infinity;
  const load = strutLoad(leg, normal, -leg.law.stiffness * work.stretch, work);
  return (yieldForce(leg.law, work.crushed) - load) / strutNormal;
}

/** What the sideways drag leaves of the friction cone for the section [N]. */
function coneLeft({ law }: SectionLeg, friction: number, normal: number, { drag }: LegWork): number {
  const limit = friction * normal;
  const sideways = law.stiffness * drag;
  return Math.sqrt(Math.max(0, limit * limit - sideways * sideways));
}

function lastForce(law: CrushLaw): number {
  return law.stages[law.stages.length - 1]?.force ?? 0;
}

function release(work: LegWork): void {
  work.inContact = false;
  work.stretch = 0;
  work.drag = 0;
  work.load = 0;
  work.forceX = 0;
  work.forceY = 0;
  work.moment = 0;
}
