import { advance } from './advance.ts';
import { REST_PENDULUM, STEPS_PER_LOOK } from './constants.ts';
import type { TouchdownKernel } from './kernel.ts';
import { RUN_HOLD_X, RUN_HULL_ON, BODY_LX, RUN_THRUST, BODY_VX } from './layout.ts';
import { kineticEnergy } from './ledger.ts';
import type { RunCourse } from './runCourse.ts';
import { isAtRest } from './settling.ts';
import type { StartedRun } from './startTouchdown.ts';

/**
 * Lets a lander that is decided to stay up come to rest where its contacts hold it: it is let go from where it is, and stopped each time its kinetic
 * energy has passed a peak (kinetic damping of dynamic relaxation; common practice, no source at hand). Returns the steps that took.
 */
export function bringToRest(kernel: TouchdownKernel, started: StartedRun, course: RunCourse): number {
  const { body, run } = kernel;
  const most = Math.ceil((REST_PENDULUM * Math.sqrt(started.scale / started.gravity)) / started.step);
  run[RUN_THRUST] = 0;
  run.fill(0, RUN_HOLD_X, RUN_HOLD_X + 3);
  run[RUN_HULL_ON] = 1;
  course.restLooks = 0;
  let before = Infinity;
  let steps = 0;
  while (steps < most) {
    const kinetic = kineticEnergy(kernel);
    if (kinetic < before) {
      body.fill(0, BODY_VX, BODY_VX + 3);
      body.fill(0, BODY_LX, BODY_LX + 3);
    }
    before = kinetic < before ? 0 : kinetic;
    advance(kernel, STEPS_PER_LOOK);
    steps += STEPS_PER_LOOK;
    if (isAtRest(kernel, started, course)) break;
  }
  return steps;
}
