import { headerOf, type ForkRefusal, type ForkRequest, type RecordLine } from '../../engine/record/index.ts';
import type { Result } from '../../engine/result.ts';
import { wantedFork, type Fork, type Table, type TablePlan, type WantedFork } from '../../engine/table/index.ts';

import { layWhatIf } from '../../levels/index.ts';

/** Flies a fork without holding up the tables; undefined when the server closes. */
export type FlyFork = (request: ForkRequest) => Promise<Result<Fork, ForkRefusal> | undefined>;

/** Remembers of one table what a fork of its record takes, and has it flown when a descent is at rest. */
export interface ForkKeeper {
  /** Gets each line of the record. */
  note(line: RecordLine): void;
  /** To be called when the table has been stepped: what is worth flying again is asked for once a descent, and laid on the table when it comes. */
  look(table: Table): void;
}

export function createForkKeeper(options: {
  readonly fly: FlyFork;
  readonly onFault: (fault: Error, where: string) => void;
  /** The record so far. */
  readonly lines?: readonly RecordLine[];
}): ForkKeeper {
  const { fly, onFault } = options;
  // of the marks only the last one is needed, to see that what is flown again is what happened
  const lines: RecordLine[] = [];
  let markAt = -1;
  const note = (line: RecordLine) => {
    if (line.line === 'mark') {
      if (markAt >= 0) lines.splice(markAt, 1);
      markAt = lines.length;
    }
    lines.push(line);
  };
  options.lines?.forEach(note);
  const flyWanted = async (plan: TablePlan, { change, lay, refuse }: WantedFork) => {
    const other = layWhatIf(plan, change);
    const record = { header: headerOf(plan), lines: [...lines] };
    const flown = await fly({ record, plan, change, ...(other && { other }) });
    if (flown?.ok === true) lay(flown.value);
    else if (flown?.error.code === 'record/nothing-changed') refuse(flown.error.reason);
    else if (flown !== undefined) throw new Error(flown.error.reason);
  };
  return {
    note,
    look(table) {
      const wanted = wantedFork(table);
      if (wanted === undefined) return;
      flyWanted(table.plan, wanted).catch((error: unknown) =>
        onFault(error instanceof Error ? error : new Error(String(error)), 'fork'),
      );
    },
  };
}
