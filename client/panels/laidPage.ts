import type { Role, TableView } from '../../engine/table/index.ts';

/** Figures change this often [ms]; the drawing has its own pace. */
export const FIGURES_MS = 280;

/** A table as it lies on the page. */
export interface LaidTable {
  /** Whether the person may go at once; otherwise they are asked. */
  mayLeave(): boolean;
  leave(): void;
}

export interface LayActions {
  /** The person has left; with the reason when it was not their own wish. */
  readonly onLeave: (words?: string) => void;
  /** Something else is to be played, or the person is something else here: this page is at an end, and has to be laid anew from what is shown now. */
  readonly onOtherPlan: (shown: TableView) => void;
}

/** Says of each view whether another descent has begun since the last one. */
export function createAnewCheck(): (view: TableView) => boolean {
  let last: TableView | undefined;
  return (view) => {
    const before = last;
    last = view;
    if (before === undefined || view.stage !== 'descending') return false;
    return before.stage === 'resolved' || view.flight.tick < before.flight.tick;
  };
}

/** Which page somebody has: that of the crew, of the control side, or of the room. */
export function pageFor(role: Role): 'crew' | 'control' | 'room' {
  if (role === 'room screen') return 'room';
  return role === 'facilitator' || role === 'evaluator' ? 'control' : 'crew';
}

/** Whether a page laid for one view does not fit the other. The ground is read anew from each view, the pace too. */
export function isOtherPage(a: TableView, b: TableView): boolean {
  if (pageFor(a.you.role) !== pageFor(b.you.role)) return true;
  return (['lander', 'site', 'world', 'start', 'mode', 'sensorTrouble', 'drill'] as const).some(
    (name) => a.plan.choice[name] !== b.plan.choice[name],
  );
}
