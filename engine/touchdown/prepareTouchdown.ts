import { massProperties } from '../lander/massProperties.ts';
import type { BodyPoint, Lander } from '../lander/lander.ts';
import { direction3, dot3, length3, subtract3, type Vec3 } from '../math/vec3.ts';
import { accept, refuse, type FieldProblem, type Result } from '../result.ts';
import type { TouchdownKernel } from './kernel.ts';
import {
  FOOT_AREA,
  BODY_SIZE,
  FOOT_BOTTOMED_STIFFNESS,
  FOOT_SIZE,
  FOUND_SIZE,
  FOOT_X,
  HULL_FORCE_SIZE,
  HULL_SIZE,
  FOOT_LATERAL_END,
  FOOT_LATERAL_STIFFNESS,
  FOOT_LEG,
  FOOT_LEG_STIFFNESS,
  RUN_SIZE,
  FOOT_SECONDARY,
  FOOT_STRUT,
  TRIAL_SIZE,
} from './layout.ts';
import { principalAxes } from './principalAxes.ts';
import { TOUCH_SIZE } from './profileGround.ts';

/** Makes a lander ready for any number of touchdowns, or says why its legs cannot be simulated. */
export function prepareTouchdown(lander: Lander): Result<TouchdownKernel, readonly FieldProblem[]> {
  const problems = checkLegs(lander);
  if (problems.length > 0) return refuse(problems);
  const { mass, center, inertia } = massProperties(lander);
  const { moments, axes } = principalAxes(inertia);
  for (const moment of moments) {
    if (!(moment > 0)) problems.push(problem('lander', 'some moment of inertia about every axis', `${moment} kg m²`));
  }
  if (problems.length > 0) return refuse(problems);

  const toPrincipal = (point: BodyPoint): Vec3 => [dot3(axes[0], point), dot3(axes[1], point), dot3(axes[2], point)];
  const legsAsBuilt = new Float64Array(lander.legs.length * FOOT_SIZE);
  let reach = 0;
  lander.legs.forEach((leg, index) => {
    const o = index * FOOT_SIZE;
    const pad = toPrincipal(subtract3(leg.footpad, center));
    const strut = toPrincipal(direction3(subtract3(leg.hip, leg.footpad)) ?? [0, 0, 1]);
    legsAsBuilt.set(pad, o + FOOT_X);
    legsAsBuilt.set(strut, o + FOOT_STRUT);
    legsAsBuilt[o + FOOT_LEG] = index;
    legsAsBuilt[o + FOOT_AREA] = (Math.PI / 4) * leg.footpadDiameter * leg.footpadDiameter;
    legsAsBuilt[o + FOOT_LEG_STIFFNESS] = leg.stiffness;
    legsAsBuilt[o + FOOT_LATERAL_STIFFNESS] = leg.secondary?.stiffness ?? leg.stiffness;
    legsAsBuilt[o + FOOT_BOTTOMED_STIFFNESS] = leg.bottomedStiffness;
    legsAsBuilt[o + FOOT_SECONDARY] = leg.secondary?.force ?? Infinity;
    legsAsBuilt[o + FOOT_LATERAL_END] = leg.secondary?.stroke ?? 0;
    reach = Math.max(reach, length3(pad));
  });
  const hull = new Float64Array(lander.hull.length * HULL_SIZE);
  lander.hull.forEach((point, index) => {
    const at = toPrincipal(subtract3(point, center));
    hull.set(at, index * HULL_SIZE);
    reach = Math.max(reach, length3(at));
  });
  return accept({
    lander,
    mass,
    center,
    axes,
    moments,
    legsAsBuilt,
    hull,
    reach,
    body: new Float64Array(BODY_SIZE),
    feet: new Float64Array(legsAsBuilt.length),
    run: new Float64Array(RUN_SIZE),
    found: new Float64Array(FOUND_SIZE),
    trial: new Float64Array(TRIAL_SIZE),
    hullForce: new Float64Array(HULL_FORCE_SIZE),
    impulse: new Float64Array(6),
    touch: new Float64Array(TOUCH_SIZE),
    feetEnd: 0,
    footprint: [],
    stages: lander.legs.map((leg) => new Float64Array(2 * leg.stages.length)),
    profile: undefined,
  });
}

function problem(path: string, expected: string, came: string): FieldProblem {
  return { code: 'touchdown/leg-unfit', path, expected, came };
}

/** What the contact law needs of a leg beyond what the parser of landers asks. */
function checkLegs(lander: Lander): FieldProblem[] {
  const problems: FieldProblem[] = [];
  if (lander.legs.length === 0) problems.push(problem('lander.legs', 'at least one leg', 'none'));
  lander.legs.forEach((leg, index) => {
    const path = `lander.legs[${index}]`;
    if (!(leg.stiffness > 0)) problems.push(problem(`${path}.stiffness`, 'more than 0 N/m', `${leg.stiffness}`));
    if (!(leg.bottomedStiffness >= leg.stiffness)) {
      const expected = `at least the elastic stiffness, ${leg.stiffness} N/m`;
      problems.push(problem(`${path}.bottomedStiffness`, expected, `${leg.bottomedStiffness}`));
    }
    if (leg.stages.length === 0) problems.push(problem(`${path}.stages`, 'at least one stage', 'none'));
    if (!(leg.footpadDiameter > 0))
      problems.push(problem(`${path}.footpadDiameter`, 'more than 0 m', `${leg.footpadDiameter}`));
    const rise = leg.hip[2] - leg.footpad[2];
    if (!(rise > 0)) problems.push(problem(`${path}.hip`, 'a hip above its footpad', `${rise} m above`));
    if (
      leg.secondary !== undefined &&
      !(leg.secondary.stiffness > 0 && leg.secondary.force > 0 && leg.secondary.stroke >= 0)
    ) {
      problems.push(
        problem(
          `${path}.secondary`,
          'stiffness and force more than 0, stroke at least 0',
          JSON.stringify(leg.secondary),
        ),
      );
    }
  });
  return problems;
}
