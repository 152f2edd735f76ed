import type { BodyPoint, Lander, Leg } from '../../engine/lander/lander.ts';

/** A lander for tests: one lump of mass on legs at equal angles. Nobody's vehicle. */
export interface RingLander {
  readonly mass: number;
  /** Principal inertias [kg·m²]. */
  readonly inertia: BodyPoint;
  readonly centerHeight: number;
  readonly legCount: number;
  /** Center to footpad [m]. */
  readonly radius: number;
  readonly firstAzimuth?: number;
  readonly crushForce: number;
  readonly stroke?: number;
  readonly stiffness?: number;
  readonly bottomedStiffness?: number;
  /** How far in from the footpad, toward the axis, the hip lies; default 0, an upright strut [m]. */
  readonly hipInset?: number;
  readonly hipHeight?: number;
  readonly secondary?: Leg['secondary'];
  readonly hull?: readonly BodyPoint[];
  readonly center?: BodyPoint;
}

export function ringLander(shape: RingLander): Lander {
  const legs: Leg[] = [];
  for (let i = 0; i < shape.legCount; i++) {
    const azimuth = (shape.firstAzimuth ?? 0) + (2 * Math.PI * i) / shape.legCount;
    const at = (radius: number, z: number): BodyPoint => [radius * Math.cos(azimuth), radius * Math.sin(azimuth), z];
    legs.push({
      footpad: at(shape.radius, 0),
      hip: at(shape.radius - (shape.hipInset ?? 0), shape.hipHeight ?? 1.5),
      footpadDiameter: 0.5,
      stiffness: shape.stiffness ?? 2e6,
      stages: [{ force: shape.crushForce, stroke: shape.stroke ?? 1 }],
      bottomedStiffness: shape.bottomedStiffness ?? Math.max(4e6, shape.stiffness ?? 0),
      ...(shape.secondary === undefined ? {} : { secondary: shape.secondary }),
    });
  }
  return {
    id: 'plain',
    name: 'Plain',
    summary: 'A lump of mass on legs.',
    parts: [
      {
        name: 'body',
        kind: 'dry',
        mass: shape.mass,
        center: shape.center ?? [0, 0, shape.centerHeight],
        shape: { kind: 'inertia', moments: shape.inertia },
      },
    ],
    tanks: [],
    legs,
    hull: shape.hull ?? [],
    engine: { maxThrust: 10_000, minThrust: 1000, specificImpulse: 310, lag: 0.2, attitudeTorque: 200 },
    probeLength: 0,
  };
}
