import type { JudgedDescent } from '../../engine/table/index.ts';

/** For descents whose card nobody reads: its limits take some tenths of a second to find. */
export const NOTHING_JUDGED: JudgedDescent = {
  outcome: 'stopped',
  contacts: [],
  contactCount: 0,
  restTilt: 0,
  strokeUsed: [],
  propellantLeft: 0,
  physics: 0,
};
