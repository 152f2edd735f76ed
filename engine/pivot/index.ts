/** Public door of the trip limits and of rocking. */
export {
  requiredStance,
  WIDEST,
  type RequiredStance,
  type StanceDemand,
  type StancelessBody,
} from './requiredStance.ts';
export {
  peakAfterImpact,
  quarterPeriod,
  rockingModel,
  slenderOverturningPulse,
  slenderPeakShare,
  slenderQuarterPeriod,
  type NextPeak,
  type RockingCondition,
  type RockingModel,
  type RockingSide,
} from './rocking.ts';
export {
  rock,
  rockingEnergy,
  type RockingEvent,
  type RockingRun,
  type RockingSpan,
  type RockingState,
} from './rockingMotion.ts';
export {
  criticalFriction,
  tripLimit,
  type ContactCondition,
  type PivotBody,
  type SpeedLimit,
  type TripLimit,
} from './tripLimit.ts';
