import { PLAN_FORMAT, type PlanChoice } from '../../engine/table/index.ts';

/** For plans that a test lays out by hand: its names name nothing. */
export const plainChoice: PlanChoice = {
  format: PLAN_FORMAT,
  lander: 'plain',
  site: 'flat',
  world: 'moon',
  seed: 7,
  start: 'low',
  mode: 'by hand',
  pace: 1,
  sensorTrouble: 'none',
};
