import { assert } from '../assert.ts';
import type { Lander } from './lander.ts';
import { massProperties } from './massProperties.ts';

/** What a lander weighs with its tanks empty, and as its file fills them [kg]. */
export function massRange(lander: Lander): { readonly empty: number; readonly full: number } {
  const noFill = lander.tanks.map(() => 0);
  return { empty: massProperties(lander, noFill).mass, full: massProperties(lander).mass };
}

/** A mass that was added up otherwise may be this share over the full one [-]: rounding of a dozen additions. */
const ROUNDING = 1e-12;

/** The same lander with its tanks drained evenly until it has this mass [kg], which lies in its range. */
export function drainTanks(lander: Lander, mass: number): Lander {
  const { empty, full } = massRange(lander);
  if (mass >= full && mass <= full * (1 + ROUNDING)) return lander;
  assert(mass >= empty && mass < full, `the mass lies between ${empty} and ${full} kg, got ${mass}`);
  const left = (mass - empty) / (full - empty);
  return { ...lander, tanks: lander.tanks.map((tank) => ({ ...tank, fill: tank.fill * left })) };
}
