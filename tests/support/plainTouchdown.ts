import type { TouchdownState } from '../../engine/world/index.ts';

/** An arrival at a walking pace, to the right, down a slope of 0.1: every number plain, for tests that change one. */
export const PLAIN_TOUCHDOWN: TouchdownState = {
  tick: 1500,
  x: 3,
  vx: 0.87,
  descentRate: 1.1,
  angle: 0,
  rate: 0,
  slope: -0.1,
  mass: 2000,
  firstFoot: 'left',
};
