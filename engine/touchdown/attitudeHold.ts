import { HOLD_DAMPING } from './constants.ts';
import type { TouchdownKernel } from './kernel.ts';
import { RUN_AXIS_X, RUN_GX, RUN_HOLD_X, RUN_INVERSE_IX, BODY_LX, BODY_R11 } from './layout.ts';

/**
 * Sets the moment of the attitude thrusters that turns the long axis back to the vertical, about lateral axes only.
 *
 *   M = I (w^2 (z x up) - 2 zeta w omega),  |M| <= torque                         second-order loop, saturated
 *
 * w  bandwidth [rad/s]   z  long axis   up  against gravity   omega  rates across the long axis; z x up has length sin(lean)
 */
export function setHoldMoment(kernel: TouchdownKernel, gravity: number, bandwidth: number): void {
  const { body, run, moments, lander } = kernel;
  const limit = lander.engine.attitudeTorque;
  // up in the principal frame
  const up = [0, 1, 2].map((i) => {
    const seen =
      body[BODY_R11 + i]! * run[RUN_GX]! +
      body[BODY_R11 + 3 + i]! * run[RUN_GX + 1]! +
      body[BODY_R11 + 6 + i]! * run[RUN_GX + 2]!;
    return -seen / gravity;
  });
  const axis = [run[RUN_AXIS_X]!, run[RUN_AXIS_X + 1]!, run[RUN_AXIS_X + 2]!];
  const rate = [0, 1, 2].map((i) => body[BODY_LX + i]! * run[RUN_INVERSE_IX + i]!);
  const lean = [
    axis[1]! * up[2]! - axis[2]! * up[1]!,
    axis[2]! * up[0]! - axis[0]! * up[2]!,
    axis[0]! * up[1]! - axis[1]! * up[0]!,
  ];
  const spin = axis[0]! * rate[0]! + axis[1]! * rate[1]! + axis[2]! * rate[2]!;
  const moment = [0, 1, 2].map((i) => {
    const across = rate[i]! - spin * axis[i]!;
    return moments[i]! * (bandwidth * bandwidth * lean[i]! - 2 * HOLD_DAMPING * bandwidth * across);
  });
  const size = Math.sqrt(moment[0]! * moment[0]! + moment[1]! * moment[1]! + moment[2]! * moment[2]!);
  const share = size > limit ? limit / size : 1;
  for (let i = 0; i < 3; i++) run[RUN_HOLD_X + i] = moment[i]! * share;
}
