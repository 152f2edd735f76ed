/** Public door of the outside checks. */
export {
  CHECKED_RANGES,
  outsideCheckedRange,
  RANGED_MODELS,
  type CheckedRange,
  type RangedModel,
  UNCHECKED_FEATURES,
  type UncheckedFeature,
} from './checkedRange.ts';
export { achievedError, credibilityCard, formatCard, uncheckedLines, type CredibilityCard } from './credibilityCard.ts';
export {
  CHECK_KINDS,
  type CheckKind,
  type CheckRelation,
  type CheckResult,
  type GravityOf,
  type OutsideCheck,
} from './outsideCheck.ts';
export { OUTSIDE_CHECKS, runChecks } from './outsideChecks.ts';
export { landerShape, rangedShape, type RangedShape } from './rangedShape.ts';
