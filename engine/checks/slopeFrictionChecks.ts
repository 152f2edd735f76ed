import { assert } from '../assert.ts';
import { cos, sin } from '../math/trig.ts';
import { DEGREE, land, plane, sled } from './equalLegs.ts';
import type { OutsideCheck } from './outsideCheck.ts';
import { AT_MOST, EQUALS_PRINTED } from './tolerances.ts';

const COULOMB = 'Coulomb friction on an inclined plane: g (sin - mu cos); textbook';
const DERIVED = { kind: 'derived', seen: 'yes' } as const;

/** Sticking and sliding on a slope. */
export const SLOPE_FRICTION_CHECKS: readonly OutsideCheck[] = [
  stick('moon'),
  slide('moon', '0.24481'),
  slide('earth', '1.4781'),
];

function stick(world: string): OutsideCheck {
  return {
    ...DERIVED,
    ...AT_MOST,
    name: 'way on a slope of 25 deg when friction is 1.01 times what holds it, Moon',
    source: COULOMB,
    expected: '0.01',
    unit: 'm',
    note: 'it stays where it is set down; 0.01 m is our allowance for the swing of the legs as the weight comes on',
    compute: (gravityOf) => {
      const slope = 25 * DEGREE;
      const ground = plane((1.01 * sin(slope)) / cos(slope), slope);
      const state = { horizontalSpeed: 0, descentRate: 0, pitch: slope };
      const arrival = { ground, state };
      const { outcome, slide: way } = land(sled(), gravityOf(world), arrival, {
        stopWhenDecided: false,
        timeLimit: 20,
      });
      return outcome === 'upright' ? way : Infinity;
    },
  };
}

function slide(world: string, expected: string): OutsideCheck {
  return {
    ...DERIVED,
    ...EQUALS_PRINTED,
    name: `acceleration down a slope of 25 deg at friction 0.3, ${world === 'moon' ? 'Moon' : 'Earth'}`,
    source: COULOMB,
    expected,
    unit: 'm/s^2',
    compute: (gravityOf) => {
      const slope = 25 * DEGREE;
      const state = { horizontalSpeed: 0, descentRate: 0, pitch: slope };
      const { history } = land(
        sled(),
        gravityOf(world),
        { ground: plane(0.3, slope), state },
        { timeLimit: 4, historyEvery: 64, stopWhenDecided: false },
      );
      assert(history !== undefined, 'the history was asked for');
      // from 1 s to 3 s, when the swing of the legs is over
      const [early, late] = [1, 3].map((second) => history.find(({ time }) => time >= second));
      assert(early !== undefined && late !== undefined, 'the run lasts for 4 s');
      const rise = (i: 0 | 1 | 2): number => late.velocity[i] - early.velocity[i];
      return Math.sqrt(rise(0) * rise(0) + rise(2) * rise(2)) / (late.time - early.time);
    },
  };
}
