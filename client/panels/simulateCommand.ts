import { arrivalCase } from '../../engine/table/index.ts';
import type { TouchdownState } from '../../engine/world/index.ts';
import type { PlayedPlan } from '../plan.ts';
import { inDegrees } from '../text/numbers.ts';

/** The command that simulates this very arrival again, on the same ground with every leg, and says all that came of it. */
export function simulateCommand({ setup, siteId, seed }: PlayedPlan, touchdown: TouchdownState): string {
  const { state, gravity, lander } = arrivalCase(setup, touchdown);
  const { horizontalSpeed, descentRate, yaw = 0, pitch = 0, roll = 0 } = state;
  const options: readonly (readonly [string, number | string])[] = [
    ['gravity', gravity],
    ['site', siteId],
    ['site-seed', seed],
    ['site-x', touchdown.x],
    ['mass', touchdown.mass],
    ['horizontal', horizontalSpeed],
    ['descent', descentRate],
    ['yaw', inDegrees(yaw)],
    ['pitch', inDegrees(pitch)],
    ['roll', inDegrees(roll)],
    // counter-clockwise in the section is away from its right, along which the command travels
    ['rate', inDegrees(-touchdown.rate)],
  ];
  return `npx kilter touchdown ${lander.id} ${options.map(([name, value]) => `--${name} ${value}`).join(' ')}`;
}
