import type { Lander } from '../../engine/lander/lander.ts';

/** What a test wants of a lander; the rest is plain. */
export interface PlainLanderShape {
  readonly mass?: number;
  /** Of the center of mass [m]. */
  readonly centerHeight?: number;
  /** Feet on a square, this far from the middle to each side [m]. */
  readonly halfStance?: number;
  /** About every axis through the center of mass [kg·m²]. */
  readonly inertia?: number;
  /** Crush force of each of the four legs [N], and stroke [m]. */
  readonly force?: number;
  readonly stroke?: number;
  /** [N/m] */
  readonly stiffness?: number;
  /** How far inward of its footpad each strut meets the body, along x and along y [m]; its height there is 1 m. */
  readonly splay?: number;
  readonly maxThrust?: number;
  readonly minThrust?: number;
  readonly lag?: number;
  /** Propellant in one small tank at the center of mass [kg]. */
  readonly propellant?: number;
  readonly hull?: Lander['hull'];
}

/** Four vertical legs on a square, one stage each, a box for a hull: what formulas can be worked out for by hand. */
export function plainLander(shape: PlainLanderShape = {}): Lander {
  const { mass = 2000, centerHeight = 2, halfStance = 1.5, inertia = 3000, splay = 0, propellant = 0 } = shape;
  const corners = [
    [1, 1],
    [-1, 1],
    [-1, -1],
    [1, -1],
  ] as const;
  return {
    id: 'plain',
    name: 'Plain',
    summary: 'Four legs on a square, for tests.',
    parts: [
      {
        name: 'body',
        kind: 'dry',
        mass,
        center: [0, 0, centerHeight],
        shape: { kind: 'inertia', moments: [inertia, inertia, inertia] },
      },
    ],
    tanks:
      propellant === 0
        ? []
        : [
            {
              name: 'tank',
              orientation: 'upright',
              radius: 0.5,
              length: 1,
              bottomHeight: centerHeight - 0.5,
              offset: [0, 0],
              fill: 1,
              density: propellant / (Math.PI * 0.25),
            },
          ],
    legs: corners.map(([x, y]) => ({
      footpad: [x * halfStance, y * halfStance, 0],
      hip: [x * (halfStance - splay), y * (halfStance - splay), 1],
      footpadDiameter: 0.4,
      stiffness: shape.stiffness ?? 2e6,
      stages: [{ force: shape.force ?? 20_000, stroke: shape.stroke ?? 0.6 }],
      bottomedStiffness: Math.max(5e6, shape.stiffness ?? 0),
    })),
    hull: shape.hull ?? [
      [-1, -1, 0.9],
      [1, -1, 0.9],
      [1, 1, 0.9],
      [-1, 1, 0.9],
      [-1, -1, 3],
      [1, -1, 3],
      [1, 1, 3],
      [-1, 1, 3],
    ],
    engine: {
      maxThrust: shape.maxThrust ?? 12_000,
      minThrust: shape.minThrust ?? 2400,
      specificImpulse: 311,
      lag: shape.lag ?? 0.2,
      attitudeTorque: 1500,
    },
    probeLength: 0,
  };
}
