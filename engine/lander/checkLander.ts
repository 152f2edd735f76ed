/** Checks between the fields of a lander: that it can exist, can stand, and was written in the units of the format. */
import { report, type ProblemList } from '../fieldReader.ts';
import { checkBound, round } from './checkBound.ts';
import { checkLegs } from './checkLegs.ts';
import { boxAround, checkParts, type Box } from './checkParts.ts';
import type { Lander } from './lander.ts';
import { LEAST_GYRATION, RANGES } from './landerRanges.ts';
import { massProperties, type MassProperties } from './massProperties.ts';

export function checkLander(list: ProblemList, lander: Lander): void {
  const box = boxAround(lander);
  if (Math.min(...box.sides) === 0) {
    const expected = 'points that span a volume, with the hips';
    report(list, 'flat-hull', { path: 'hull', expected, came: 'points in one plane' });
    return;
  }
  const bulk = massProperties(lander);
  checkParts(list, lander, box);
  checkSize(list, lander, box, bulk);
  checkEngine(list, lander, bulk);
  checkLegs(list, lander, bulk);
}

function checkSize(list: ProblemList, lander: Lander, box: Box, bulk: MassProperties): void {
  const { mass } = bulk;
  if (mass > RANGES.mass.most)
    report(list, 'too-heavy', { path: '', expected: `at most ${RANGES.mass.most} kg`, came: `${round(mass)} kg` });
  const volume = box.sides[0] * box.sides[1] * box.sides[2];
  checkBound(list, mass / volume, 'meanDensity', { path: '', what: 'mass over the box around hull and hips' });
  checkTurning(list, box, bulk);
  checkBound(list, box.longest / Math.min(...box.sides), 'slenderness', {
    path: 'hull',
    what: 'longest over shortest side of the box around hull and hips',
  });
  const feet = lander.legs.map((leg) => leg.footpad);
  const across = (axis: 0 | 1) => Math.max(...feet.map((at) => at[axis])) - Math.min(...feet.map((at) => at[axis]));
  checkBound(list, Math.max(across(0), across(1)) / box.longest, 'footprintShare', {
    path: 'legs',
    what: 'footprint over longest side of the box around hull and hips',
  });
}

/**
 * About every axis the radius of gyration is at least LEAST_GYRATION of the longest side: lumps in one line have no moment about it, and a step
 * of the touchdown is as short as the least moment asks.
 *
 *   I - m r^2 1 is positive definite: its leading minors are above 0                                     Sylvester's criterion
 */
function checkTurning(list: ProblemList, box: Box, { mass, inertia }: MassProperties): void {
  const radius = LEAST_GYRATION * box.longest;
  const least = mass * radius * radius;
  const [a, b, c] = [inertia.xx - least, inertia.yy - least, inertia.zz - least];
  const { xy, xz, yz } = inertia;
  const two = a * b - xy * xy;
  const three = c * two - a * yz * yz - b * xz * xz + 2 * xy * xz * yz;
  if (a > 0 && two > 0 && three > 0) return;
  const expected = `parts or tanks whose radius of gyration is at least ${round(radius)} m about every axis`;
  report(list, 'no-moment', { path: 'parts', expected, came: 'less about one axis' });
}

function checkEngine(list: ProblemList, lander: Lander, { mass, inertia }: MassProperties): void {
  const { maxThrust, minThrust, attitudeTorque } = lander.engine;
  const thrust = { path: 'engine.maxThrust', what: 'thrust over mass' };
  checkBound(list, maxThrust / mass, 'thrustAcceleration', thrust);
  checkBound(list, minThrust / maxThrust, 'throttle', {
    path: 'engine.minThrust',
    what: 'minimum over maximum thrust',
  });
  checkBound(list, attitudeTorque / Math.max(inertia.xx, inertia.yy), 'attitudeAcceleration', {
    path: 'engine.attitudeTorque',
    what: 'torque over the larger moment of inertia about x or y',
  });
}
