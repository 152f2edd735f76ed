import type { LimitTable } from '../../engine/table/index.ts';
import { findLander } from '../landers.ts';
import { limitAxes } from './limitAxes.ts';
import bolsterMoon from './bolsterMoon.json' with { type: 'json' };
import steepleMoon from './steepleMoon.json' with { type: 'json' };
import trivetMars from './trivetMars.json' with { type: 'json' };
import trivetMoon from './trivetMoon.json' with { type: 'json' };

interface LimitFile {
  readonly lander: string;
  readonly world: string;
  readonly limits: readonly number[];
}

const FILES: readonly LimitFile[] = [trivetMoon, trivetMars, steepleMoon, bolsterMoon];

/** The table of tip limits of a shipped lander on a world; undefined where none is shipped. */
export function findLimits(landerId: string, worldId: string): LimitTable | undefined {
  const file = FILES.find(({ lander, world }) => lander === landerId && world === worldId);
  const lander = findLander(landerId);
  if (file === undefined || lander === undefined) return undefined;
  const axes = limitAxes(lander);
  const expected = axes.slopes.length * axes.descentRates.length * axes.leans.length * axes.masses.length;
  if (file.limits.length !== expected)
    throw new Error(`limits of ${landerId} on ${worldId}: expected ${expected} limits, got ${file.limits.length}`);
  return { ...axes, limits: file.limits };
}
