/** Public door of studies: what is asked of a lander without flying it, for the command line and the workbench alike. */
export {
  ASSUMED_DESCENT,
  DEFAULT_FRICTION,
  simulatedArrivals,
  type ArrivalQuestion,
  type Arrivals,
  type LeastTipFields,
  type TipFields,
} from './arrivals.ts';
export { leastLimit, limitsRound, rigidRound, type LimitsSoFar, type RigidRound } from './limitsRound.ts';
export { reshape, SHAPE_FACTS, SHAPE_FIELDS, shapeOf, type Reshaping, type ShapeField } from './reshape.ts';
export { earth, stanceByWorld, type StanceRow } from './stanceByWorld.ts';
export { standardCampaign } from './standardCampaign.ts';
export {
  planeQuestion,
  touchdownConditions,
  type PlaneGrid,
  type StudiedTouchdown,
  type StudyCase,
} from './studyCase.ts';
export { tradeOf, tradePoint, whatBuysMost, type Bought, type Trade } from './trade.ts';
