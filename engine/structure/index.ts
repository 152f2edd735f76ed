/** Public door of structure and of lying down. */
export { type LanderAssessment } from './assessLander.ts';
export { compareUprightLying, type ComparedRow, type UprightLying } from './compare.ts';
export { isLying, type GearCase } from './gearLoad.ts';
export { layOnSide } from './layOnSide.ts';
export { heavier, withLegs, withStance } from './stanceTrade.ts';
