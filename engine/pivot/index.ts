/** Public door of the trip limits. */
export {
  requiredStance,
  WIDEST,
  type RequiredStance,
  type StanceDemand,
  type StancelessBody,
} from './requiredStance.ts';
export {
  criticalFriction,
  tripLimit,
  type ContactCondition,
  type PivotBody,
  type SpeedLimit,
  type TripLimit,
} from './tripLimit.ts';
