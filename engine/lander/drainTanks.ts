import { assert } from '../assert.ts';
import type { Lander } from './lander.ts';
import { massProperties } from './massProperties.ts';

/**
 * The same lander with its tanks drained evenly until it has this mass [kg], which lies between empty tanks and the mass
 * it has.
 */
export function drainTanks(lander: Lander, mass: number): Lander {
  const full = massProperties(lander).mass;
  const empty = massProperties(
    lander,
    lander.tanks.map(() => 0),
  ).mass;
  if (mass === full) return lander;
  assert(mass >= empty && mass < full, `the mass lies between ${empty} and ${full} kg, came ${mass}`);
  const left = (mass - empty) / (full - empty);
  return { ...lander, tanks: lander.tanks.map((tank) => ({ ...tank, fill: tank.fill * left })) };
}
