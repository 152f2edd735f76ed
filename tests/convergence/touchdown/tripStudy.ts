/** How the simulated limit of a caught foot becomes the plastic trip limit. writeConvergence.ts makes a table and a drawing of it. */
import { tripLimit } from '../../../engine/pivot/index.ts';
import { CAUGHT, caughtLimit, FASTEST, turnsOver, type Catch } from '../../support/caughtFoot.ts';
import { MOON } from '../../support/touchDown.ts';

const STIFFNESSES = [1e4, 3e4, 1e5, 3e5, 1e6, 3e6, 1e7];
const FRICTIONS = [10, 3, 2, 1.5, 1.25, 1, 0.9, 0.85, 0.8, 0.78, 0.74];

export interface CaughtLimit extends Required<Pick<Catch, 'stiffness' | 'friction' | 'damping'>> {
  /** Undefined where it does not turn over at FASTEST either [m/s]. */
  readonly limit: number | undefined;
}

export interface TripStudy {
  /** The closed form [m/s]. */
  readonly plastic: number;
  /** Over-damped, and critically damped; friction 10. */
  readonly byStiffness: readonly CaughtLimit[];
  readonly lessDamped: readonly CaughtLimit[];
  /** Over-damped, 1e6 N/m. */
  readonly byFriction: readonly CaughtLimit[];
}

export function tripStudy(): TripStudy {
  const closed = tripLimit(CAUGHT, { gravity: MOON, slope: 0 });
  if (closed.kind !== 'limit') throw new Error('The body of the study does not stand.');
  return {
    plastic: closed.plastic.alongGround,
    byStiffness: STIFFNESSES.map((stiffness) => measure(stiffness, 10, 2)),
    lessDamped: STIFFNESSES.map((stiffness) => measure(stiffness, 10, 1)),
    byFriction: FRICTIONS.map((friction) => measure(1e6, friction, 2)),
  };
}

function measure(stiffness: number, friction: number, damping: number): CaughtLimit {
  const caught = { stiffness, friction, damping };
  return { ...caught, limit: turnsOver(caught, FASTEST) ? caughtLimit(caught) : undefined };
}
