import { assert } from '../assert.ts';
import { scale3, subtract3 } from '../math/index.ts';
import { addInertia, NO_INERTIA, pointInertia, type InertiaTensor } from './inertiaTensor.ts';
import type { BodyPoint, Lander } from './lander.ts';
import { shapeInertia } from './solids.ts';
import { tankLiquid } from './tankLiquid.ts';

export interface MassProperties {
  /** [kg] */
  readonly mass: number;
  /** Center of mass, body frame [m]. */
  readonly center: BodyPoint;
  /** About the center of mass [kg·m²]. */
  readonly inertia: InertiaTensor;
}

/** A homogeneous piece: its mass, its center and its principal inertias about that center. */
interface Piece {
  readonly mass: number;
  readonly center: BodyPoint;
  readonly moments: BodyPoint;
}

/**
 * Mass, center of mass and inertia tensor of a lander, from its parts and the liquid in its tanks.
 *
 *   m = Σ mᵢ,   c = Σ mᵢ cᵢ / m,   I = Σ (Iᵢ + mᵢ (|dᵢ|² E − dᵢ dᵢᵀ)),   dᵢ = cᵢ − c
 *
 * Liquids count as rigid, frozen level. Legs have no mass of their own: the structure's parts include them.
 *
 * fills: filled fraction of each tank, in the order of `lander.tanks` [-]. Default: as in the lander.
 */
export function massProperties(lander: Lander, fills?: readonly number[]): MassProperties {
  assert(fills === undefined || fills.length === lander.tanks.length, 'fills names one fraction for each tank');
  const pieces: readonly Piece[] = [
    ...lander.parts.map((part) => ({ ...part, moments: shapeInertia(part.shape, part.mass) })),
    ...lander.tanks.map((tank, index) => tankLiquid(tank, fills?.[index])),
  ];
  const mass = pieces.reduce((sum, piece) => sum + piece.mass, 0);
  assert(mass > 0, 'a lander has mass');
  const center = scale3(weightedSum(pieces), 1 / mass);
  let inertia = NO_INERTIA;
  for (const piece of pieces) {
    const [xx, yy, zz] = piece.moments;
    inertia = addInertia(inertia, { ...NO_INERTIA, xx, yy, zz });
    inertia = addInertia(inertia, pointInertia(piece.mass, subtract3(piece.center, center)));
  }
  return { mass, center, inertia };
}

function weightedSum(pieces: readonly Piece[]): BodyPoint {
  let [x, y, z] = [0, 0, 0];
  for (const piece of pieces) {
    x += piece.mass * piece.center[0];
    y += piece.mass * piece.center[1];
    z += piece.mass * piece.center[2];
  }
  return [x, y, z];
}
