/** Public door of the outside checks. */
export { CHECKED_RANGES, outsideCheckedRange, RANGED_MODELS, type RangedModel } from './checkedRange.ts';
export { achievedError, credibilityCard, formatCard, uncheckedLines, type CredibilityCard } from './credibilityCard.ts';
export { SIMPLIFICATIONS } from './credibilityFactors.ts';
export { CHECK_KINDS, type CheckRelation, type CheckResult } from './outsideCheck.ts';
export { OUTSIDE_CHECKS, runChecks, runOneCheck } from './outsideChecks.ts';
export { landerShape, rangedShape, type RangedShape } from './rangedShape.ts';
