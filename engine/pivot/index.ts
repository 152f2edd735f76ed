/** Public door of the trip limits and of rocking. */
export { FIRST_CONTACTS, type FirstContact } from './edgePivot.ts';
export { pivotBodyOver } from './pivotBodyOver.ts';
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
export {
  tripLimitByAzimuth,
  tripLimitToward,
  type AzimuthTrip,
  type EdgeSpeedLimit,
  type LeastTrip,
  type TravelCondition,
  type TripCurve,
} from './tripLimitByAzimuth.ts';
