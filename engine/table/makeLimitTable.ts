import { assert } from '../assert.ts';
import { drainTanks } from '../lander/drainTanks.ts';
import type { Lander } from '../lander/lander.ts';
import { tan } from '../math/trig.ts';
import { formatProblem } from '../result.ts';
import type { TouchdownKernel } from '../touchdown/kernel.ts';
import { prepareTouchdown } from '../touchdown/prepareTouchdown.ts';
import { HIGHEST_FRICTION } from '../touchdown/speedSampler.ts';
import { tipLimit } from '../touchdown/tipLimit.ts';
import type { TouchdownCase } from '../touchdown/touchdownCase.ts';
import type { Soil } from '../ground/soil.ts';
import type { Terrain } from '../ground/terrain.ts';
import type { LimitTable } from './limitTable.ts';
import { arrivalCase } from './simulateArrival.ts';

/** What a table of limits is made for. */
export interface LimitTableRequest extends Omit<LimitTable, 'limits'> {
  readonly lander: Lander;
  /** [m/s²] */
  readonly gravity: number;
  /** Absent: rigid ground. */
  readonly soil?: Soil;
}

/** One contact for which the table has an entry. */
export interface LimitEntry {
  readonly slope: number;
  readonly descentRate: number;
  readonly lean: number;
  readonly mass: number;
}

/** The contacts of a table, in the order of its limits. */
export function entriesOf(axes: Omit<LimitTable, 'limits'>): readonly LimitEntry[] {
  return axes.slopes.flatMap((slope) =>
    axes.descentRates.flatMap((descentRate) =>
      axes.leans.flatMap((lean) => axes.masses.map((mass) => ({ slope, descentRate, lean, mass }))),
    ),
  );
}

/**
 * What computes the limit of one entry [m/s]; where it tips at no speed looked at, the last one looked at. Seconds to minutes for a whole table: never
 * between two frames. At the highest plausible friction alone: less lets the feet slide (README.md).
 */
export function limitMaker({ lander, gravity, soil, masses }: LimitTableRequest): (entry: LimitEntry) => number {
  const kernels = new Map(masses.map((mass) => [mass, kernelOf(lander, mass)]));
  return (entry) => {
    const kernel = kernels.get(entry.mass);
    assert(kernel !== undefined, `the table is made for a lander of ${entry.mass} kg`);
    const { speed, upTo } = tipLimit(kernel, evenArrival(lander, gravity, entry, soil));
    return speed ?? upTo;
  };
}

/** An arrival to the right on even ground of the highest plausible friction, as the played world would have it. */
export function evenArrival(
  lander: Lander,
  gravity: number,
  { slope, descentRate, lean, mass }: LimitEntry,
  soil?: Soil,
): TouchdownCase {
  const fall = EVEN_REACH * tan(slope);
  const terrain: Terrain = {
    firstX: -EVEN_REACH,
    spacing: 2 * EVEN_REACH,
    heights: [fall, -fall],
    friction: HIGHEST_FRICTION,
    ...(soil && { soil }),
  };
  const start = { x: 0, y: 0, angle: 0, vx: 0, vy: 0, rate: 0 };
  return arrivalCase(
    { lander, gravity, terrain, start, propellant: 0 },
    { tick: 0, x: 0, vx: 1, descentRate, angle: -lean, rate: 0, slope: -slope, mass, firstFoot: 'both' },
  );
}

/** Half length of the even ground [m]: farther than anything slides. */
const EVEN_REACH = 1000;

function kernelOf(lander: Lander, mass: number): TouchdownKernel {
  const prepared = prepareTouchdown(drainTanks(lander, mass));
  if (!prepared.ok) throw new Error(prepared.error.map(formatProblem).join('; '));
  return prepared.value;
}
