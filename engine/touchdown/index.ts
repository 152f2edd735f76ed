/** Public door of the touchdown simulation. */
export { checkTouchdown } from './checkTouchdown.ts';
export { DEFAULT_STEP } from './constants.ts';
export type { TouchdownKernel } from './kernel.ts';
export { criticalAzimuths } from './criticalAzimuths.ts';
export { leastTipLimit } from './leastTipLimit.ts';
export { prepareTouchdown } from './prepareTouchdown.ts';
export { runTouchdown } from './runTouchdown.ts';
export { bekkerSinkage } from './soil.ts';
export { simulateTouchdown } from './simulateTouchdown.ts';
export {
  TOUCHDOWN_OUTCOMES,
  type AttitudeHold,
  type ContactState,
  type Ground,
  type LegCondition,
  type LoadLimits,
  type ThrustTail,
  type TouchdownCase,
  type TouchdownConditions,
  type TouchdownOptions,
  type TouchdownOutcome,
  type TouchdownResult,
  type TouchdownSample,
} from './touchdownCase.ts';
export { hasTipped, HIGHEST_FRICTION } from './speedSampler.ts';
export { FIRST_LIMITS, tipLimit, type FirstLimit, type TipLimit, type TipLimitOptions } from './tipLimit.ts';
