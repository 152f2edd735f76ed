import { land, plane, prepareGear, sled } from './equalLegs.ts';
import type { GravityOf, OutsideCheck } from './outsideCheck.ts';
import { EQUALS_PRINTED } from './tolerances.ts';

const ENERGY = 'energy: m v^2 / 2 + m g s = n F s; worked out beside the check';
const DERIVED = { kind: 'derived', seen: 'yes' } as const;

/** Falling onto the legs, and what they crush. */
export const DROP_CHECKS: readonly OutsideCheck[] = [
  drop(4, '0.117261'),
  drop(2, '0.244888'),
  drop(1, '0.537263'),
  {
    ...DERIVED,
    ...EQUALS_PRINTED,
    name: 'speed at contact after the probe has touched',
    source: 'uniform acceleration; textbook',
    expected: '2.523',
    unit: 'm/s',
    note: '67 in of fall from 3 ft/s on the Moon, simulated to first contact',
    compute: fallAfterProbe,
  },
];

function drop(legCount: number, expected: string): OutsideCheck {
  return {
    ...DERIVED,
    ...EQUALS_PRINTED,
    name: `crush stroke of a drop on ${legCount} leg${legCount === 1 ? '' : 's'}`,
    source: ENERGY,
    expected,
    unit: 'm',
    note: '2000 kg, 3 m/s, 20 kN a leg, Moon',
    compute: (gravityOf) => {
      const kernel = prepareGear({
        mass: 2000,
        inertia: [2000, 2000, 2000],
        centerHeight: 1.5,
        legCount,
        radius: legCount === 1 ? 0 : 2,
        stages: [{ force: 20_000, stroke: 1 }],
        stiffness: 1e12,
      });
      const arrival = { ground: plane(0.7), state: { horizontalSpeed: 0, descentRate: 3 } };
      // until it stands for the first time; the struts are all but rigid
      const timeLimit = 0.4 / legCount;
      return land(kernel, gravityOf('moon'), arrival, { timeLimit, damping: 0 }).strokes[0]!;
    },
  };
}

function fallAfterProbe(gravityOf: GravityOf): number {
  const gravity = gravityOf('moon');
  const state = { horizontalSpeed: 0, descentRate: 3 * 0.3048, height: 67 * 0.0254 };
  const { firstContact } = land(sled(), gravity, { ground: plane(0.7), state }, { step: 1 / 4096, timeLimit: 2 });
  return state.descentRate + gravity * firstContact;
}
