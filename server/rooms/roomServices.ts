import type { PlanChoice, TableModel, TablePlan } from '../../engine/table/index.ts';
import type { Journal, UnfinishedTable } from '../storage/index.ts';
import type { FlyFork } from './forkKeeper.ts';
import type { Processes } from './processes.ts';
import type { TableRegistry } from './tableRegistry.ts';
import type { Ticker } from './ticker.ts';

/** Given by the server to each room when it is made. */
export interface RoomServices {
  readonly ticker: Ticker;
  readonly registry: TableRegistry;
  readonly model: TableModel;
  /** Of a new table, for what its opener chose; without a choice, the server's own. */
  readonly plan: (choice?: PlanChoice, recorded?: unknown) => TablePlan;
  readonly journal: Journal;
  readonly flyFork: FlyFork;
  /** Other processes that serve the same name. */
  readonly processes: Processes;
  /** Tables that are taken up from the journal: for the room that is made with the key of one, which takes it from here. */
  readonly takenUp: Map<string, UnfinishedTable>;
  readonly seatKeptSeconds: number;
  readonly idleMinutes: number;
  readonly onFault: (fault: Error, where: string) => void;
}
