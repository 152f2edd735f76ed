/** Public door of the estimate. */
export { arrivalOdds, type ArrivalBelief, type SideLimit } from './arrivalOdds.ts';
export { feetOf, type FootOffset } from './clearance.ts';
export { createEstimate, type Estimate, type EstimateSetup, type MotionFigures } from './estimate.ts';
export { estimateView, type EstimateView } from './estimateView.ts';
export { firstGuess, START_SIGMA, trueFigures } from './firstGuess.ts';
export { drawMap, ORBITAL_SURVEY, type MapGround } from './mapGround.ts';
export { realignInertialUnit } from './realign.ts';
export { JUDGMENTS, SOURCE_STATES, type Judgment, type Judgments, type SourceState } from './sourceTrack.ts';
export { stepEstimate } from './stepEstimate.ts';
export { GATE } from './weighReport.ts';
