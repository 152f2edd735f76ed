import type { Result } from '../../engine/result.ts';
import type { Command, PlanChoice, Refusal, TableView } from '../../engine/table/index.ts';
import type { DescentEvent } from '../../engine/world/index.ts';

/**
 * One member's line to a table. Two kinds share this interface and one contract suite: the table that runs in this browser
 * (solo play, nothing leaves the page) and the table that runs on the server (a crew).
 */
export interface TableLink {
  /** 'local': the authority runs here. 'shared': it runs on the server. */
  readonly kind: 'local' | 'shared';
  readonly state: LinkState;
  /** The newest view, or undefined until the first one has come. A new object each time it changes; never written to. */
  readonly view: TableView | undefined;
  /** As shown to people, such as 'HKT VRQ'. Only a shared table has one. */
  readonly code?: string | undefined;
  /** The line is down, or was until the last change, because the server is being restarted. */
  readonly isRestarting?: boolean;

  /** Why the link is closed, in words for the person; present when `state` is 'closed' and nobody here asked for it. */
  readonly closedBecause?: string | undefined;

  /** Calls back after each new view or change of state. Returns the function that ends the subscription. */
  subscribe(listener: LinkListener): () => void;

  /** Asks the table for something. What it refuses comes back as a value; the promise itself never rejects. */
  command(command: Command): Promise<Result<void, Refusal>>;

  /** Asks for something else to be played, before the first descent. Only a shared table has a lobby where that can be asked. */
  choose?(choice: PlanChoice): Promise<Result<void, Refusal>>;

  /** The record of the table as JSON Lines, once a descent is at rest. */
  recordText(): Promise<Result<string, Refusal>>;

  /** The drill of the table as JSON, with all that it hides: for facilitator and evaluator, and for everybody once a descent is at rest. */
  drillText(): Promise<Result<string, Refusal>>;

  /** Leaves the table for good: the seat becomes free. The link is closed afterwards. */
  leave(): void;
}

/**
 * connecting: no view yet. connected: views flow. reconnecting: the line dropped, the seat is kept, the link tries by
 * itself; the last view stays. closed: over, by `leave()` or for the reason in `closedBecause`.
 */
export const LINK_STATES = ['connecting', 'connected', 'reconnecting', 'closed'] as const;
export type LinkState = (typeof LINK_STATES)[number];

/** Gets the happenings since the last call: each exactly once, for sound, drawing and logs; often none. */
export type LinkListener = (events: readonly DescentEvent[]) => void;
