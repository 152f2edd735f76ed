import { drainTanks } from '../../../engine/lander/drainTanks.ts';
import type { Lander } from '../../../engine/lander/index.ts';
import { nextUniform, type RandomState } from '../../../engine/math/random.ts';
import { arrivalCase, leastLimit, type LimitEntry } from '../../../engine/table/index.ts';
import { HIGHEST_FRICTION, prepareTouchdown, tipLimit, type TouchdownCase } from '../../../engine/touchdown/index.ts';
import { findLimits } from '../../../levels/index.ts';
import { MOON } from '../../support/dropLander.ts';

/** Over the weakest edge, for which a table has its entries, or over the edge on the other side. */
export const TRAVELS = ['right', 'left'] as const;
type Travel = (typeof TRAVELS)[number];

interface TableError {
  readonly contact: LimitEntry;
  /** What the live margin looks up, and what a search of that very contact finds [m/s]. */
  readonly table: number;
  readonly direct: number;
  /** table − direct; negative on the low side [m/s]. */
  readonly error: number;
  /** Of the search [m/s]. */
  readonly tolerance: number;
}

/** Errors of the shipped table of a lander on the Moon, turned by so many edges, over contacts drawn evenly from all that it holds. */
export function tableErrors(
  lander: Lander,
  travel: Travel,
  random: RandomState,
  count: number,
  facing = 0,
): TableError[] {
  const limits = findLimits(lander.id, 'moon');
  if (limits === undefined) throw new Error(`no limits of ${lander.id}`);
  const within = (entries: readonly number[]): number => {
    const [least, most] = [entries[0]!, entries.at(-1)!];
    return least + (most - least) * nextUniform(random);
  };
  return Array.from({ length: count }, () => {
    const contact = {
      slope: within(limits.slopes),
      descentRate: within(limits.descentRates),
      lean: within(limits.leans),
      mass: within(limits.masses),
    };
    const { slope, descentRate, lean, mass } = contact;
    const table = leastLimit(limits, {
      slope: [slope, slope],
      descentRate: [descentRate, descentRate],
      lean: [lean, lean],
      mass: [mass, mass],
    });
    if (typeof table === 'string') throw new Error(`beyond the table: ${table}`);
    const prepared = prepareTouchdown(drainTanks(lander, mass));
    if (!prepared.ok) throw new Error(`${lander.id} does not lend itself to simulation`);
    const { speed, upTo, tolerance } = tipLimit(prepared.value, arrivalToward(lander, travel, contact, facing));
    const direct = speed ?? upTo;
    return { contact, table, direct, error: table - direct, tolerance };
  });
}

/** On even ground of the highest plausible friction, long enough to slide on [m]. */
const REACH = 1000;

function arrivalToward(
  lander: Lander,
  travel: Travel,
  { slope, descentRate, lean, mass }: LimitEntry,
  facing: number,
): TouchdownCase {
  const sense = travel === 'right' ? 1 : -1;
  const fall = sense * REACH * Math.tan(slope);
  const terrain = { firstX: -REACH, spacing: 2 * REACH, heights: [fall, -fall], friction: HIGHEST_FRICTION };
  const start = { x: 0, y: 0, angle: 0, vx: 0, vy: 0, rate: 0 };
  return arrivalCase(
    { lander, gravity: MOON, terrain, start, propellant: 0 },
    {
      tick: 0,
      x: 0,
      vx: sense,
      descentRate,
      angle: -sense * lean,
      rate: 0,
      slope: -sense * slope,
      mass,
      firstFoot: 'both',
      facing,
    },
  );
}
