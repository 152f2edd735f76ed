import type { Source } from '../sensors/sources.ts';

/** Which report a sensor fault is laid on. */
export interface FaultMoment {
  readonly source: Source;
  /** At which the report comes [tick]. */
  readonly tick: number;
  /** Of the sensors' seed, see sensors/noise.ts; faults that draw numbers have streams of their own. */
  readonly key: number;
}
