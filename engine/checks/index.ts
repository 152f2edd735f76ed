/** Public door of the outside checks. */
export {
  CHECK_KINDS,
  type CheckKind,
  type CheckRelation,
  type CheckResult,
  type GravityOf,
  type OutsideCheck,
} from './outsideCheck.ts';
export { OUTSIDE_CHECKS, runChecks } from './outsideChecks.ts';
