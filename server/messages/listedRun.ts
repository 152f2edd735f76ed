import type { RunSummary } from '../../engine/record/index.ts';
import type { PlanChoice } from '../../engine/table/index.ts';

/** A run as the logbook lists it. */
export interface ListedRun {
  readonly id: string;
  /** Of its table; another table may have had the same one before. */
  readonly code: string;
  readonly choice: PlanChoice;
  /** Absent: a free descent. */
  readonly drillTitle?: string;
  readonly openedMs: number;
  /** Its table is open: it can be listed, and nothing more. */
  readonly isOpen: boolean;
  readonly isKept: boolean;
  /** Absent where it is kept, or open. */
  readonly expiresMs?: number;
  /** Being worked out: look again in a moment. */
  readonly isPending: boolean;
  /** Absent while its table is open or it is pending, and of a run that this version does not play. */
  readonly summary?: RunSummary;
}
