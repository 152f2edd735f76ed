import { describe, expect, it } from 'vitest';
import { advance } from '../../../engine/touchdown/advance.ts';
import { setHoldMoment } from '../../../engine/touchdown/attitudeHold.ts';
import { prepareTouchdown } from '../../../engine/touchdown/index.ts';
import { RUN_HOLD_X } from '../../../engine/touchdown/layout.ts';
import { startTouchdown } from '../../../engine/touchdown/startTouchdown.ts';
import { MOON, plane } from '../../support/touchDown.ts';
import { plainLander } from '../../support/plainLander.ts';

const [INERTIA, TORQUE, BANDWIDTH] = [3000, 1500, 0.5];

/** Of the moment of the thrusters on a lander that leans and does not turn [N m]. */
function holdMoment(
  lean: { readonly pitch?: number; readonly roll?: number },
  yaw: number,
  bandwidth = BANDWIDTH,
): number {
  const prepared = prepareTouchdown(plainLander({ inertia: INERTIA }));
  if (!prepared.ok) throw new Error(JSON.stringify(prepared.error));
  const state = { horizontalSpeed: 0, descentRate: 0, height: 10, yaw, ...lean };
  startTouchdown(prepared.value, { gravity: MOON, ground: plane(1), state }, {});
  // no step: only what follows from the attitude
  advance(prepared.value, 0);
  setHoldMoment(prepared.value, MOON, bandwidth);
  const [x = 0, y = 0, z = 0] = prepared.value.run.subarray(RUN_HOLD_X, RUN_HOLD_X + 3);
  return Math.hypot(x, y, z);
}

describe('the moment of the thrusters that hold a lander upright', () => {
  it.each([0, 0.7, 2])('[TD17] grows with the sine of the lean, whatever way it leans and faces: yaw %f', (yaw) => {
    for (const lean of [{ pitch: 0.2 }, { roll: 0.2 }, { pitch: -0.2 }])
      expect(holdMoment(lean, yaw)).toBeCloseTo(INERTIA * BANDWIDTH ** 2 * Math.sin(0.2), 6);
  });

  it('[TD17] is at most their torque', () => {
    // asked for 2384 N m
    expect(holdMoment({ pitch: 0.2 }, 0.7, 4 * BANDWIDTH)).toBeCloseTo(TORQUE, 6);
  });
});
