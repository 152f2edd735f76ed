import { TICK_RATE } from '../world/constants.ts';
import { isCovered } from './attendance.ts';
import type { TableState } from './tableState.ts';
import { SEATS, type Command, type Seat } from './tableTypes.ts';

/** An order that waits, face down, for the turn to be played. */
export interface LaidOrder {
  readonly seat: Seat;
  readonly order: Order;
}

/** What a seat orders, and may lay face down. */
export const ORDERS = [
  'judgeSource',
  'nameCause',
  'realign',
  'setCeiling',
  'armCutOff',
  'fireCutOff',
  'setCutAtContact',
  'shutLine',
  'markSpot',
  'clearSpot',
  'declareGround',
  'stateLimit',
  'orderFacing',
  'orderDescentRate',
  'orderDrift',
  'orderLean',
  'abort',
] as const satisfies readonly Command['kind'][];
export type Order = Extract<Command, { readonly kind: (typeof ORDERS)[number] }>;

/** How long the clock runs under the orders of a turn [tick of the descent]. */
export const TURN_TICKS = 4 * TICK_RATE;

/** In turns, the clock stands: orders are laid, not carried out. */
export function isLaying({ conduct, stage, turnEndsAt }: TableState): boolean {
  return conduct === 'turns' && stage === 'descending' && turnEndsAt === undefined;
}

export function isOrder(command: Command): command is Order {
  return ORDERS.some((kind) => kind === command.kind);
}

/** With an order laid; it takes the place of an earlier one about the same thing. */
export function layDown(laid: readonly LaidOrder[], next: LaidOrder): readonly LaidOrder[] {
  return [...laid.filter((before) => !isSameMatter(before, next)), next];
}

function isSameMatter(one: LaidOrder, other: LaidOrder): boolean {
  return one.seat === other.seat && matterOf(one.order) === matterOf(other.order);
}

/** Drift and lean stand for each other; each source is judged, and named, by itself. */
function matterOf(order: Order): string {
  if (order.kind === 'orderDrift' || order.kind === 'orderLean') return 'across';
  if (order.kind === 'markSpot' || order.kind === 'clearSpot') return 'spot';
  return 'source' in order ? `${order.kind} ${order.source}` : order.kind;
}

/** Seats at which somebody sits whose order is still awaited; not Lead's, who turns them over and has none but to abort. */
export function awaitedSeats(state: TableState): readonly Seat[] {
  const isAwaited = (seat: Seat) =>
    seat !== 'lead' && !isCovered(state, seat) && state.laid.every((order) => order.seat !== seat);
  return SEATS.filter(isAwaited);
}
