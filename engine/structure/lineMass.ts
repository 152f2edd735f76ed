/** The mass of a lander spread along its long axis, for bending. */
import { tankLiquid } from '../lander/index.ts';
import type { Lander, Part, Tank } from '../lander/lander.ts';

/** Mass along a line: a lump where from = to, else spread evenly. */
export interface LineMass {
  readonly from: number;
  readonly to: number;
  /** [kg] */
  readonly mass: number;
}

interface LineMassTotals {
  /** [kg] */
  readonly mass: number;
  /** [m] */
  readonly center: number;
  /** About the center, of the line alone [kg·m²]. */
  readonly inertia: number;
}

/**
 * Mass of a lander along its body axis y (lying) or z (upright). Cylinders, tubes, boxes and liquids are spread evenly over
 * their length; points, and lumps with a stated inertia, stand at their center, which overstates the moment they cause.
 */
export function lineMass(lander: Lander, axis: 'y' | 'z', fills?: readonly number[]): readonly LineMass[] {
  return [
    ...lander.parts.map((part) => partMass(part, axis)),
    ...lander.tanks.map((tank, i) => liquidMass(tank, axis, fills?.[i] ?? tank.fill)),
  ].filter(({ mass }) => mass > 0);
}

export function lineTotals(masses: readonly LineMass[]): LineMassTotals {
  let mass = 0;
  let moment = 0;
  for (const piece of masses) {
    mass += piece.mass;
    moment += (piece.mass * (piece.from + piece.to)) / 2;
  }
  const center = moment / mass;
  let inertia = 0;
  for (const piece of masses) {
    const arm = (piece.from + piece.to) / 2 - center;
    const length = piece.to - piece.from;
    inertia += piece.mass * (arm * arm + (length * length) / 12);
  }
  return { mass, center, inertia };
}

function partMass({ mass, center, shape }: Part, axis: 'y' | 'z'): LineMass {
  const middle = axis === 'y' ? center[1] : center[2];
  switch (shape.kind) {
    case 'point':
    case 'inertia':
      return { from: middle, to: middle, mass };
    case 'box':
      return spread(middle, axis === 'y' ? shape.size[1] : shape.size[2], mass);
    case 'cylinder':
    case 'tube':
      return spread(middle, shape.axis === axis ? shape.length : 2 * shape.radius, mass);
  }
  return shape satisfies never;
}

function liquidMass(tank: Tank, axis: 'y' | 'z', fill: number): LineMass {
  const { mass, center } = tankLiquid(tank, fill);
  const isAlong = (tank.orientation === 'lying') === (axis === 'y');
  const length = tank.orientation === 'lying' ? tank.length : fill * tank.length;
  return spread(axis === 'y' ? center[1] : center[2], isAlong ? length : 2 * tank.radius, mass);
}

function spread(middle: number, length: number, mass: number): LineMass {
  return { from: middle - length / 2, to: middle + length / 2, mass };
}
