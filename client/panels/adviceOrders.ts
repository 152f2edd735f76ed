import type { TableView } from '../../engine/table/index.ts';
import { COACH } from '../text/en.ts';
import { speed } from '../text/numbers.ts';
import { adviseGrounded, descentRateAim, type Advice } from './advice.ts';
import { isDry } from './alerts.ts';

/** An order may be this much faster than what is aimed for before the coach speaks [-], [m/s]; on the way to it the lander may be off by the latter. */
const TOO_FAST = 1.15;
const FAST_BY = 0.4;
/** Slower than this it would take too long to get down [m/s]. */
const BARELY_SINKING = 0.35;
/** Of a drift that is ordered, what is too much near the ground: a share of the tip limit, and at least [-], [m/s]. */
const DRIFT_SHARE = 0.35;
const DRIFT_LEAST = 0.25;
/** Lean that matters [deg], and the height of the lowest foot below which it does [m]. */
const LEANING_DEG = 2;
const NEARLY_DOWN = 15;

/** The one thing to order now, for whoever is at Flying in a descent by orders. */
export function adviseOrders(view: TableView): Advice {
  const { flight, orders } = view;
  const grounded = adviseGrounded(view, { thrust: false, tilt: true });
  if (grounded !== undefined) return grounded;
  if (isDry(view)) return { key: 'orderDry', words: COACH.orderDry };
  if (view.engine.cutOff === 'fired') return { key: 'cutOff', words: COACH.cutOff };
  if (orders === undefined) return { key: 'steady', words: COACH.steady };
  const rate = orders.descentRateTenths / 10;
  const aim = descentRateAim(flight.height, view.drill);
  if (rate > TOO_FAST * aim + FAST_BY) return { key: 'orderSlower', words: COACH.orderSlower(speed(aim, 1)) };
  const across = adviseAcross(view, orders);
  if (across !== undefined) return across;
  if (rate < BARELY_SINKING) return { key: 'orderDown', words: COACH.orderDown(speed(aim, 1)) };
  if (-flight.vy > TOO_FAST * rate + FAST_BY || isDriftOff(view, orders))
    return { key: 'obeying', words: COACH.obeying };
  return view.margin.predicted?.callout === 'outside'
    ? { key: 'orderSofter', words: COACH.orderSofter }
    : { key: 'orderSteady', words: COACH.orderSteady };
}

type Ordered = NonNullable<TableView['orders']>;

function adviseAcross({ flight, margin }: TableView, orders: Ordered): Advice | undefined {
  const most = Math.max(DRIFT_LEAST, DRIFT_SHARE * (margin.predicted?.limit ?? 0));
  if (orders.across === 'lean') {
    // leaning left is counter-clockwise and pushes to the left
    const isAgainst = orders.leanDeg * flight.vx > 0;
    if (flight.height < NEARLY_DOWN && Math.abs(orders.leanDeg) > LEANING_DEG)
      return { key: 'orderUpright', words: COACH.orderUpright };
    if (Math.abs(flight.vx) >= most && !isAgainst) return { key: 'orderDrift', words: COACH.orderDrift };
    return undefined;
  }
  const drift = orders.driftTenths / 10;
  return Math.abs(drift) >= most
    ? { key: 'orderNoDrift', words: COACH.orderNoDrift(speed(Math.abs(drift), 1)) }
    : undefined;
}

function isDriftOff({ flight }: TableView, { across, driftTenths }: Ordered): boolean {
  return across === 'drift' && Math.abs(flight.vx - driftTenths / 10) > FAST_BY;
}
