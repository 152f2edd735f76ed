import { isControl, type Table } from '../../engine/table/index.ts';

/** Steps from one sending of what a seat alone reads to the next: five a second. The figures on a page change four times a second, and nothing there moves between them. */
export const STEPS_PER_READING = 12;

/**
 * Says at each sending whose own paper is written anew. What everybody sees moves on the drawing, and goes with each sending; what a seat alone reads are figures,
 * which go less often, but at once where anything was done, said, dealt or ended. The control side draws what is true, and gets all.
 */
export function createOwnReadings(): {
  /** Something was asked of the table. */
  note(): void;
  /** To be asked once at each sending. `steps`: that the table has made. */
  due(state: Table['state'], steps: number): (member: Table['state']['members'][number]) => boolean;
} {
  let isNews = true;
  let before: readonly unknown[] = [];
  return {
    note: () => void (isNews = true),
    due(state, steps) {
      const { stage, talk, events, judgments, turnEndsAt } = state;
      const told = [stage, talk, events, judgments, turnEndsAt];
      const isForAll =
        isNews || stage !== 'descending' || steps % STEPS_PER_READING === 0 || told.some((one, i) => one !== before[i]);
      isNews = false;
      before = told;
      return (member) => isForAll || isControl(member);
    },
  };
}
