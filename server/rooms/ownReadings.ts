import type { Table } from '../../engine/table/index.ts';

/** Steps from one sending of what a seat alone reads to the next: five a second. The figures on a page change four times a second, and nothing there moves between them. */
export const STEPS_PER_READING = 12;

/**
 * Says at each sending whether the members' own papers are written anew. What everybody sees moves on the drawing, and goes with each sending; what a seat alone
 * reads are figures, which go less often, but at once where anything was done, said, dealt or ended.
 */
export function createOwnReadings(): {
  /** Something was asked of the table. */
  note(): void;
  /** To be asked once at each sending. `steps`: that the room has made. */
  areDue(state: Table['state'], steps: number): boolean;
} {
  let isNews = true;
  let before: readonly unknown[] = [];
  return {
    note: () => void (isNews = true),
    areDue({ stage, talk, events, judgments, turnEndsAt }, steps) {
      const told = [stage, talk, events, judgments, turnEndsAt];
      const areDue =
        isNews || stage !== 'descending' || steps % STEPS_PER_READING === 0 || told.some((one, i) => one !== before[i]);
      isNews = false;
      before = told;
      return areDue;
    },
  };
}
