/** Public door of structure and of lying down. */
export {
  assessLander,
  REFERENCE_TILT,
  type ComparedLanding,
  type LanderAssessment,
  type LiquidFigures,
  type StandingFigures,
} from './assessLander.ts';
export { beamExtremes, breakpoints, momentAt, shearAt, type BeamExtremes, type BeamLoad } from './beam.ts';
export {
  compareAssessments,
  compareUprightLying,
  CONSEQUENCES,
  type ComparedRow,
  type CompareOptions,
  type Consequence,
  type UprightLying,
} from './compare.ts';
export { onSupports, reactions, type Reaction } from './continuousBeam.ts';
export { bodyTube, gearLoad, isLying, worstUse, type GearCase, type GearLoad } from './gearLoad.ts';
export { layOnSide, suggestSideLegs, type SideLegs } from './layOnSide.ts';
export { LEG_LAW_RANGE, legAnchor, legMass, type LegAnchor, type LegMass } from './legMass.ts';
export { canalMode, FULLEST, sloshAcross, sloshAlong, type SloshMode } from './lyingSlosh.ts';
export { liquidSection, shiftAlong, type LiquidSection } from './lyingTank.ts';
export { stanceTrade, type StancePoint } from './stanceTrade.ts';
export { bucklingStress, tubeUse, type ThinTube, type TubeLoad, type TubeUse } from './thinTube.ts';
export { pushedBeam, restingBeam, touchdownCases, type BeamCase, type StationForce } from './touchdownBeam.ts';
