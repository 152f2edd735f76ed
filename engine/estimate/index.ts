/** Public door of the estimate. */
export { arrivalOdds, type ArrivalBelief, type SideLimit } from './arrivalOdds.ts';
export { feetOf, type FootOffset } from './clearance.ts';
export { createEstimate, type Estimate, type EstimateSetup, type MotionFigures } from './estimate.ts';
export { estimateView, type EstimateView, type SourceView } from './estimateView.ts';
export { firstGuess, START_SIGMA, trueFigures } from './firstGuess.ts';
export { drawMap, ORBITAL_SURVEY, type MapGround, type MapSurvey } from './mapGround.ts';
export { realignInertialUnit } from './realign.ts';
export { JUDGEMENTS, SOURCE_STATES, type Judgement, type Judgements, type SourceState } from './sourceTrack.ts';
export { stepEstimate } from './stepEstimate.ts';
