import { assert } from '../assert.ts';
import type { Lander, Leg } from '../lander/lander.ts';
import { cos, sin } from '../math/trig.ts';
import {
  prepareTouchdown,
  runTouchdown,
  type ContactState,
  type Ground,
  type TouchdownKernel,
  type TouchdownOptions,
  type TouchdownResult,
} from '../touchdown/index.ts';

export const DEGREE = Math.PI / 180;

/** A lump of mass on equal legs; hips 3 m up, pads 0.9 m wide. */
interface Gear {
  readonly mass: number;
  readonly inertia: readonly [number, number, number];
  readonly centerHeight: number;
  readonly legCount: number;
  readonly radius: number;
  readonly firstAzimuth?: number;
  readonly stages: Leg['stages'];
  readonly stiffness: number;
  readonly hipInset?: number;
  readonly secondary?: NonNullable<Leg['secondary']>;
}

/** That lander, ready to touch down any number of times. */
export function prepareGear(gear: Gear): TouchdownKernel {
  const legs = Array.from({ length: gear.legCount }, (_, i): Leg => {
    const azimuth = (gear.firstAzimuth ?? 0) + (2 * Math.PI * i) / gear.legCount;
    const hipRadius = gear.radius - (gear.hipInset ?? 0);
    return {
      footpad: [gear.radius * cos(azimuth), gear.radius * sin(azimuth), 0],
      hip: [hipRadius * cos(azimuth), hipRadius * sin(azimuth), 3],
      footpadDiameter: 0.9,
      stiffness: gear.stiffness,
      stages: gear.stages,
      bottomedStiffness: 4 * gear.stiffness,
      ...(gear.secondary === undefined ? {} : { secondary: gear.secondary }),
    };
  });
  const shape = { kind: 'inertia', moments: gear.inertia } as const;
  const lander: Lander = {
    id: 'check',
    name: 'Check',
    summary: 'A lump of mass on equal legs.',
    parts: [{ name: 'body', kind: 'dry', mass: gear.mass, center: [0, 0, gear.centerHeight], shape }],
    tanks: [],
    legs,
    hull: [],
    engine: { maxThrust: 1, minThrust: 1, specificImpulse: 300, lag: 0, attitudeTorque: 0 },
    probeLength: 0,
  };
  const prepared = prepareTouchdown(lander);
  assert(prepared.ok, 'the landers of the checks can be simulated');
  return prepared.value;
}

/** One touchdown of it. */
export function land(
  kernel: TouchdownKernel,
  gravity: number,
  arrival: { readonly ground: Ground; readonly state: ContactState },
  options: TouchdownOptions = {},
): TouchdownResult {
  return runTouchdown(kernel, { gravity, ...arrival }, options);
}

export function plane(friction: number, slope = 0): Ground {
  return { shape: { kind: 'plane', slope }, friction };
}

/** A low, wide body that neither crushes nor tips. */
export function sled(): TouchdownKernel {
  return prepareGear({
    mass: 2000,
    inertia: [1500, 1500, 2500],
    centerHeight: 0.8,
    legCount: 4,
    radius: 2.5,
    stages: [{ force: 1e6, stroke: 1 }],
    stiffness: 2e6,
  });
}
