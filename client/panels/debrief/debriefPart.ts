import type { Drill } from '../../../engine/drill/index.ts';
import type { DescentLog } from '../../../engine/replay/index.ts';
import type { TableView } from '../../../engine/table/index.ts';
import type { PlayedPlan } from '../../plan.ts';

/** What is shown in one step of a debrief. */
export interface DebriefPart {
  readonly part: HTMLElement;
  refresh(view: TableView): void;
}

/** What is known of the descent besides the view; what is still being made is undefined. */
export interface KnownDescent {
  readonly plan: () => PlayedPlan;
  readonly drill: () => Drill | undefined;
  /** Samples and statements; `isFailed`: there will be none. */
  readonly log: () => DescentLog | undefined;
  readonly isFailed: () => boolean;
}

/** Whether this member writes down what is agreed: who stands at the control side, or runs a table that nobody facilitates. */
export function mayWrite({ you, others }: TableView): boolean {
  const isControl = you.role === 'facilitator' || you.role === 'evaluator';
  return isControl || (you.runs && others.every(({ role }) => role !== 'facilitator'));
}
