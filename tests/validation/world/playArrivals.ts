import type { Lander } from '../../../engine/lander/index.ts';
import { nextUniform, type RandomState } from '../../../engine/math/random.ts';
import { arrivalCase } from '../../../engine/table/index.ts';
import type { TouchdownResult } from '../../../engine/touchdown/index.ts';
import { readDescent, type DescentSetup, type DescentState } from '../../../engine/world/index.ts';
import { dropLander, evenGround, settle, type Drop } from '../../support/dropLander.ts';
import { touchDown } from '../../support/touchDown.ts';

/** Of the arrivals that the published counts are over. */
export const SEED = 20_261_130;

/** Friction of the ground on which arrivals are compared [-]. */
export const FRICTION = 1.1;

/** Least stroke that is compared [m]: of less, two percent are within the step. */
const LEAST_STROKE = 0.01;

type Played = DescentState & { readonly setup: DescentSetup };

/** Plays one arrival to its outcome. */
export function playArrival(drop: Drop): Played {
  const descent = dropLander(drop);
  settle(descent);
  return { setup: descent.setup, ...readDescent(descent) };
}

/** The same first contact in six degrees of freedom, simulated on to rest. */
export function simulateFirstContact({ setup, contacts }: Played): TouchdownResult {
  return touchDown(arrivalCase(setup, contacts[0]!), { stopWhenDecided: false });
}

export function fell({ outcome = '' }: { readonly outcome?: string }): boolean {
  return outcome.startsWith('tipped');
}

/** How play and simulation of the same arrivals compare. */
interface Agreement {
  arrivals: number;
  alike: number;
  bothFall: number;
  /** Arrivals that end otherwise, with what play and simulation say. */
  readonly otherwise: {
    readonly drop: Omit<Drop, 'lander' | 'terrain'>;
    readonly slope: number;
    readonly says: string;
  }[];
  /** Largest stroke in play over that in the simulation, less 1, of those that stand in both [-]. */
  readonly strokes: number[];
}

/** Arrivals in the plane: to 4 m/s across, 0.2 to 3 m/s down, 8 deg of slope, 7 deg of lean and 6 deg/s either way, each evenly; turned by so many edges before. */
export function compareArrivals(lander: Lander, random: RandomState, arrivals: number, facing = 0): Agreement {
  const between = (low: number, high: number): number => low + (high - low) * nextUniform(random);
  const seen: Agreement = { arrivals, alike: 0, bothFall: 0, otherwise: [], strokes: [] };
  for (let i = 0; i < arrivals; i++) {
    const slope = between(-0.14, 0.14);
    const drop = {
      vx: between(-4, 4),
      descentRate: between(0.2, 3),
      angle: between(-0.12, 0.12),
      rate: between(-0.1, 0.1),
      ...(facing !== 0 && { facing }),
    };
    const played = playArrival({ lander, terrain: evenGround(slope, FRICTION), ...drop });
    const simulated = simulateFirstContact(played);
    if (fell(played) !== fell(simulated)) {
      seen.otherwise.push({ drop, slope, says: `${played.outcome}, ${simulated.outcome}` });
      continue;
    }
    seen.alike++;
    if (fell(played)) {
      seen.bothFall++;
      continue;
    }
    const most = Math.max(...simulated.strokes);
    if (most > LEAST_STROKE) seen.strokes.push(Math.max(...played.legs.map(({ stroke }) => stroke)) / most - 1);
  }
  return seen;
}
