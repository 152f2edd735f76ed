import type { ControlInput, DescentState } from '../world/descent.ts';
import { askedRate, driftFor, SQUARE, squareLean, type DescentProfile, type PilotAim } from './steadyPilot.ts';
import { isDown, leanFor, leverFor, upwardFor, type PilotedCraft } from './steer.ts';

/** What to hold across the ground: a drift, leaning as that takes, or a lean, whatever drift comes of it. */
export const HELD_ACROSS = ['drift', 'lean'] as const;
type HeldAcross = (typeof HELD_ACROSS)[number];

/** What a crew orders the lander to hold. Whole numbers, so that all who fly them fly the same bits. */
export interface Orders {
  /** Positive downwards [dm/s]. */
  readonly descentRateTenths: number;
  readonly across: HeldAcross;
  /** Positive to the right [dm/s]; waits at its last value while a lean is held. */
  readonly driftTenths: number;
  /** Counter-clockwise positive [deg]; waits at its last value while a drift is held. */
  readonly leanDeg: number;
}

/**
 * Flies orders, and nothing but orders: whoever orders 4 m/s down to the ground gets 4 m/s. To hold a drift it leans no farther than any pilot of ours
 * does at that height (`leanFor`); a lean that was ordered is held at every height. On the ground it shuts the engine down and stands upright, unless it is to go on. It looks at
 * the state that it is given alone and remembers nothing. Common practice, no source.
 */
export function orderedPilot(
  orders: Orders,
  craft: PilotedCraft,
  state: DescentState,
  { goesOn = false }: { readonly goesOn?: boolean } = {},
): ControlInput {
  if (isDown(state) && !goesOn) return { thrustPercent: 0, tiltDeg: 0 };
  const up = upwardFor(craft.gravity, state, orders.descentRateTenths / 10);
  const tiltDeg = orders.across === 'lean' ? orders.leanDeg : leanFor(state, orders.driftTenths / 10, up);
  return { thrustPercent: leverFor(craft, state, up), tiltDeg };
}

/** What a stand-in orders: down as the stand-in flies, or by a profile; the drift taken out, or toward an aim. */
export function steadyOrders(state: DescentState, aim?: PilotAim, profile?: DescentProfile): Orders {
  const rate = askedRate({ ...SQUARE, ...(profile && { profile }) }, Math.max(0, state.height));
  const driftTenths = Math.round(10 * driftFor(SQUARE, state, aim)) + 0;
  const lean = squareLean(SQUARE, state);
  return {
    descentRateTenths: Math.round(10 * rate),
    across: lean === undefined ? 'drift' : 'lean',
    driftTenths,
    leanDeg: lean ?? 0,
  };
}
