import type { Lander } from '../../engine/index.ts';

/** The same lander with crush forces and stiffness of its legs multiplied: nearer to the rigid body of the pivot formula. */
export function hardenLegs(lander: Lander, factor: number): Lander {
  return {
    ...lander,
    legs: lander.legs.map((leg) => ({
      ...leg,
      stiffness: leg.stiffness * factor,
      bottomedStiffness: leg.bottomedStiffness * factor,
      stages: leg.stages.map(({ force, stroke }) => ({ force: force * factor, stroke })),
    })),
  };
}
