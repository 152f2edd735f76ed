/** Public door of the trip limits and of rocking. */
export { FIRST_CONTACTS, type FirstContact } from './edgePivot.ts';
export { pivotBodyOver } from './pivotBodyOver.ts';
export { requiredStance, WIDEST, type RequiredStance } from './requiredStance.ts';
export {
  quarterPeriod,
  rockingModel,
  slenderOverturningPulse,
  slenderPeakShare,
  slenderQuarterPeriod,
  type RockingModel,
} from './rocking.ts';
export { rock } from './rockingMotion.ts';
export { tripLimit, type ContactCondition, type PivotBody, type SpeedLimit, type TripLimit } from './tripLimit.ts';
export {
  tripLimitByAzimuth,
  tripLimitToward,
  type AzimuthTrip,
  type LeastTrip,
  type TravelCondition,
} from './tripLimitByAzimuth.ts';
