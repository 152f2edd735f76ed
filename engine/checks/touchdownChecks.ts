import { DROP_CHECKS } from './dropChecks.ts';
import { GEAR_TREND_CHECKS } from './gearTrendChecks.ts';
import type { OutsideCheck } from './outsideCheck.ts';
import { SINKAGE_CHECKS } from './sinkageChecks.ts';
import { SLOPE_FRICTION_CHECKS } from './slopeFrictionChecks.ts';
import { STIFF_LEGS_CHECKS } from './stiffLegsChecks.ts';

/** The simulated touchdown against values from outside. */
export const TOUCHDOWN_CHECKS: readonly OutsideCheck[] = [
  ...DROP_CHECKS,
  ...SLOPE_FRICTION_CHECKS,
  ...STIFF_LEGS_CHECKS,
  ...SINKAGE_CHECKS,
  ...GEAR_TREND_CHECKS,
];
