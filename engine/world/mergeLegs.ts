import { assert } from '../assert.ts';
import type { Leg } from '../lander/lander.ts';
import { length3, scale3, type Vec3 } from '../math/vec3.ts';
import { cross2, dot2, type Vec2 } from '../math/vec2.ts';
import type { SectionLeg } from './sectionLander.ts';

/**
 * Half of a lander's legs as one leg of the section: n/2 times the forces and stiffnesses of the weakest leg, along the
 * strut of the legs that span the edge over which it tips.
 *
 * The struts of the two legs of a pair lean to opposite sides of the section. Their sideways forces cancel on the body, but
 * not on the ground: each foot drags sideways as its leg crushes, and friction holds it. So the strut keeps its third
 * component.
 */
export function mergeLegs(legs: readonly Leg[], edgeLegs: readonly Leg[], outward: Vec2): SectionLeg {
  const weakest = legs.reduce((least, leg) => (crushEnergy(leg) < crushEnergy(least) ? leg : least));
  const count = legs.length / 2;
  const strut = meanStrut(edgeLegs, outward);
  assert(strut[1] > 0, 'the struts of a lander rise from footpad to hip');
  return {
    strut,
    legCount: count,
    law: {
      stages: weakest.stages.map(({ force, stroke }) => ({ force: count * force, stroke })),
      stiffness: count * weakest.stiffness,
      bottomedStiffness: count * weakest.bottomedStiffness,
    },
    padRadius: weakest.footpadDiameter / 2,
  };
}

/** Unit vector from footpad to hip: across the edge (inward is negative), up, and sideways to either side. */
function meanStrut(legs: readonly Leg[], outward: Vec2): Vec3 {
  let [across, up, sideways] = [0, 0, 0];
  for (const { footpad, hip } of legs) {
    const flat: Vec2 = [hip[0] - footpad[0], hip[1] - footpad[1]];
    across += dot2(outward, flat);
    up += hip[2] - footpad[2];
    sideways += Math.abs(cross2(outward, flat));
  }
  const strut: Vec3 = [across, up, sideways];
  return scale3(strut, 1 / length3(strut));
}

/** What all stages of a leg absorb [J]. */
function crushEnergy(leg: Leg): number {
  return leg.stages.reduce((sum, { force, stroke }) => sum + force * stroke, 0);
}
