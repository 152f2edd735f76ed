import { assert } from '../assert.ts';
import { atan, cos, sin } from '../math/trig.ts';
import { DEGREE, land, plane, prepareGear } from './equalLegs.ts';
import type { OutsideCheck } from './outsideCheck.ts';
import { AT_MOST } from './tolerances.ts';

const HOUSNER = 'Housner 1963, Bull. Seism. Soc. Am. 53(2) [Housner1963]';
const DERIVED = { kind: 'derived', seen: 'yes' } as const;
/** Stiff, over-damped legs stand in for a rigid body with plastic impacts: this near to it they have to come [-]. */
const STAND_IN = '0.005';
/** Balance tilt of the rocking block [rad]. */
const BALANCE = atan(0.25);

/** Six degrees of freedom on stiff legs against closed forms of a rigid body: rocking and the caught foot. */
export const STIFF_LEGS_CHECKS: readonly OutsideCheck[] = [
  peak(1, 0.5506),
  peak(2, 0.4199),
  trip(0, 1.774),
  trip(8, 1.3984),
];

/** Turning points of a block that rocks on stiff, critically damped legs, over the balance tilt. */
function peak(count: number, published: number): OutsideCheck {
  return {
    ...AT_MOST,
    name: `rocking on stiff legs: peak after ${count} impact${count === 1 ? '' : 's'}, relative deviation from ${published}`,
    source: HOUSNER,
    kind: 'form',
    seen: 'no',
    expected: STAND_IN,
    unit: '-',
    note: 'rectangle b 0.25 m h 1 m from 0.8 of the balance tilt, g 9.81 m/s^2, six degrees of freedom',
    compute: () => {
      const inertia = (1000 * (0.25 * 0.25 + 1)) / 3;
      const kernel = prepareGear({
        mass: 1000,
        inertia: [inertia, inertia, inertia],
        centerHeight: 1,
        legCount: 4,
        radius: 0.25 * Math.SQRT2,
        firstAzimuth: Math.PI / 4,
        stages: [{ force: 1e15, stroke: 1 }],
        stiffness: 1e8,
      });
      const state = { horizontalSpeed: 0, descentRate: 0, pitch: 0.8 * BALANCE };
      const { history } = land(
        kernel,
        9.81,
        { ground: plane(5), state },
        { damping: 1, timeLimit: 1 + count, stopWhenDecided: false, historyEvery: 16 },
      );
      assert(history !== undefined, 'the history was asked for');
      const leans = history.map(({ attitude }) => 2 * Math.abs(attitude[2]));
      const peaks = leans.filter(
        (lean, i) => i > 0 && lean >= leans[i - 1]! && lean > (leans[i + 1] ?? Infinity) && lean > 0.02,
      );
      return Math.abs(peaks[count - 1]! / BALANCE / published - 1);
    },
  };
}

function trip(slopeDeg: number, plastic: number): OutsideCheck {
  const where = slopeDeg === 0 ? 'level' : `${slopeDeg} deg downhill`;
  return {
    ...DERIVED,
    ...AT_MOST,
    name: `simulated limit of a caught foot, ${where}: relative deviation from ${plastic} m/s`,
    source: 'plastic pivot about the caught feet; the values of the trip limit above',
    expected: STAND_IN,
    unit: '-',
    note: 'half stance 1.5 m, center 2 m up, I = 1.5 m^2 x mass, Moon; stiff over-damped legs, friction 10, bisection to 1e-3',
    compute: (gravityOf) => {
      const kernel = prepareGear({
        mass: 2000,
        inertia: [3000, 3000, 3000],
        centerHeight: 2,
        legCount: 4,
        radius: 1.5 * Math.SQRT2,
        firstAzimuth: Math.PI / 4,
        stages: [{ force: 1e15, stroke: 1 }],
        stiffness: 2e6,
      });
      const slope = slopeDeg * DEGREE;
      const tips = (speed: number): boolean => {
        const state = { horizontalSpeed: speed * cos(slope), descentRate: speed * sin(slope), pitch: slope };
        const arrival = { ground: plane(10, slope), state };
        return land(kernel, gravityOf('moon'), arrival, { damping: 2 }).outcome === 'tipped downhill';
      };
      let [low, high] = [1, 3];
      for (let turn = 0; turn < 11; turn++) {
        const middle = (low + high) / 2;
        if (tips(middle)) high = middle;
        else low = middle;
      }
      return Math.abs((low + high) / 2 / plastic - 1);
    },
  };
}
