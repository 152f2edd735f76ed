import { WORLDS, type World } from '../worlds.ts';
import { assert } from '../assert.ts';
import { DESCENT_CHECKS } from './descentChecks.ts';
import { DISPERSION_CHECKS } from './dispersionChecks.ts';
import { runCheck, type CheckResult, type OutsideCheck } from './outsideCheck.ts';
import { ROCKING_CHECKS } from './rockingChecks.ts';
import { SLOSH_CHECKS } from './sloshChecks.ts';
import { STANCE_CHECKS } from './stanceChecks.ts';
import { STATICS_CHECKS } from './staticsChecks.ts';
import { STRUCTURE_CHECKS } from './structureChecks.ts';
import { TOUCHDOWN_CHECKS } from './touchdownChecks.ts';
import { GRAVITY_SCALING_CHECKS, TRIP_LIMIT_CHECKS } from './tripLimitChecks.ts';

/** Every outside check, from the simplest model up. A new topic is a file of its own and one line here. */
export const OUTSIDE_CHECKS: readonly OutsideCheck[] = [
  ...STATICS_CHECKS,
  ...TRIP_LIMIT_CHECKS,
  ...GRAVITY_SCALING_CHECKS,
  ...STANCE_CHECKS,
  ...ROCKING_CHECKS,
  ...SLOSH_CHECKS,
  ...STRUCTURE_CHECKS,
  ...TOUCHDOWN_CHECKS,
  ...DESCENT_CHECKS,
  ...DISPERSION_CHECKS,
];

/** Runs the outside checks in the shipped engine, with the shipped worlds unless others are handed in. */
export function runChecks(worlds: readonly World[] = WORLDS): readonly CheckResult[] {
  return OUTSIDE_CHECKS.map((_, index) => runOneCheck(index, worlds));
}

/** One of OUTSIDE_CHECKS, by its place there. */
export function runOneCheck(index: number, worlds: readonly World[] = WORLDS): CheckResult {
  const gravityOf = (worldId: string): number => {
    const world = worlds.find(({ id }) => id === worldId);
    assert(world !== undefined, `the checks need the world '${worldId}'`);
    return world.gravity;
  };
  const check = OUTSIDE_CHECKS[index];
  assert(check !== undefined, `there are ${OUTSIDE_CHECKS.length} checks, none is number ${index}`);
  return runCheck(check, gravityOf);
}
