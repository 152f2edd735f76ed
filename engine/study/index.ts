/** Public door of studies: what is asked of a lander without flying it, for the command line and the workbench alike. */
export {
  ASSUMED_DESCENT,
  ASSUMED_SPEED,
  DEFAULT_FRICTION,
  simulatedArrivals,
  type ArrivalQuestion,
  type Arrivals,
  type LeastTipFields,
  type TipFields,
} from './arrivals.ts';
export { feetRound, leastLimit, limitsRound, rigidRound, type LimitsSoFar, type RigidRound } from './limitsRound.ts';
export { planeClasses, planeDrawing, planeReach } from './planeDrawing.ts';
export { reshape, SHAPE_FACTS, SHAPE_FIELDS, shapeOf, type Reshaping, type ShapeField } from './reshape.ts';
export { earth, stanceByWorld, stanceStudy, type StanceRow, type StanceStudy } from './stanceByWorld.ts';
export {
  enterSensitivity,
  planSensitivities,
  SENSITIVITY_NAMES,
  sensitivitiesOf,
  sensitivityPoint,
  sensitivitySteps,
  type Sensitivities,
  type SensitivityName,
  type SensitivityPoint,
  type SensitivityStep,
} from './sensitivity.ts';
export {
  SENSITIVITY_KEY,
  sensitivityDrawing,
  sensitivityLines,
  sensitivityRows,
  sensitivityTable,
  stepWords,
} from './sensitivityDrawing.ts';
export { standardCampaign } from './standardCampaign.ts';
export {
  arrivalQuestion,
  planeQuestion,
  touchdownConditions,
  type PlaneGrid,
  type StudiedTouchdown,
  type StudyCase,
} from './studyCase.ts';
export {
  gainOver,
  tradeOf,
  tradePoint,
  tradeSteps,
  tradeTable,
  whatBuysCheapest,
  whatBuysMost,
  type Bought,
  type Trade,
  type TradeGain,
  type TradePoint,
} from './trade.ts';
export { GRID_KEY, gridDrawing, tradeDrawing, tradeStroke } from './tradeDrawing.ts';
export {
  bestOfGrid,
  enterPoint,
  gridPoints,
  gridTable,
  planGrid,
  tradeGridOf,
  type TradeAxes,
  type TradeGrid,
} from './tradeGrid.ts';
export { axisOf, gridLines, LIMIT_RULE, MASS_RULE, valueWords, whatBuysLines } from './tradeWords.ts';
