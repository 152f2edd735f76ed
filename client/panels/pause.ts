import type { TableView } from '../../engine/table/index.ts';
import type { CommandDesk } from '../controls/commands.ts';

interface Pause {
  /** Holds the descent of someone alone, unless it is held already; a crew goes on. */
  begin(view: TableView | undefined): void;
  /** Lets go on what was held here. */
  end(): void;
}

/** For as long as a sheet in front of the table has the eyes of whoever flies. */
export function createPause(desk: CommandDesk): Pause {
  let isHeldHere = false;
  return {
    begin(view) {
      if (view?.stage !== 'descending') return;
      isHeldHere = isAlone(view) && view.you.seat !== undefined && !view.held;
      if (isHeldHere) desk.ask({ kind: 'hold' });
    },
    end() {
      if (isHeldHere) desk.ask({ kind: 'resume' });
      isHeldHere = false;
    },
  };
}

/** Whether nobody else has a seat. */
export function isAlone({ you, seats }: TableView): boolean {
  return seats.every((other) => other.name === undefined || other.seat === you.seat);
}
