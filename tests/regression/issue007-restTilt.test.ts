/**
 * The tilt at rest was that at the moment when the run was stopped, while the lander still rocked. It is now that of the rest to which it comes when its
 * motion is taken away; what is left are landers that may rest on either of two sets of feet.
 */
import { describe, expect, it } from 'vitest';
import { MOON, plane, shippedLander, touchDown } from '../support/touchDown.ts';

const DEGREE = Math.PI / 180;

describe('the tilt at rest', () => {
  it('is that to which the lander comes when it is simulated on', () => {
    const off: number[] = [];
    for (const id of ['trivet', 'bolster', 'steeple'] as const) {
      for (const slope of [0, 3, 6, 9]) {
        for (const descentRate of [0.7, 1.4, 2.1]) {
          for (const [horizontalSpeed, yaw] of [
            [0, 11],
            [0.4, 23],
            [0.9, 41],
          ] as const) {
            const state = { horizontalSpeed, descentRate, yaw: yaw * DEGREE, pitch: 0.03 };
            const touchdown = { lander: shippedLander(id), gravity: MOON, ground: plane(0.8, slope * DEGREE), state };
            const early = touchDown(touchdown);
            if (early.outcome.startsWith('tipped')) continue;
            const late = touchDown(touchdown, { stopWhenDecided: false, timeLimit: 300 });
            off.push(Math.abs(early.restTiltDeg - late.restTiltDeg));
          }
        }
      }
    }
    expect(off.length).toBeGreaterThan(80);
    expect(off.filter((degrees) => degrees > 0.1).length).toBeLessThanOrEqual(off.length / 50);
    expect(Math.max(...off)).toBeLessThan(0.5);
  });
});
