import type { LimitTable } from '../../engine/table/index.ts';
import { findLander } from '../landers.ts';
import type { Site } from '../sites/site.ts';
import bolsterMoonDust from './bolsterMoonDust.json' with { type: 'json' };
import bolsterMoon from './bolsterMoon.json' with { type: 'json' };
import { limitAxes } from './limitAxes.ts';
import steepleMoonDust from './steepleMoonDust.json' with { type: 'json' };
import steepleMars from './steepleMars.json' with { type: 'json' };
import steepleMoon from './steepleMoon.json' with { type: 'json' };
import trivetMars from './trivetMars.json' with { type: 'json' };
import trivetMoon from './trivetMoon.json' with { type: 'json' };
import trivetMoonDust from './trivetMoonDust.json' with { type: 'json' };

interface LimitFile {
  readonly lander: string;
  readonly world: string;
  /** Whose soft ground it is for; absent: rigid ground, whatever the site. */
  readonly site?: string;
  readonly limits: readonly number[];
}

const FILES: readonly LimitFile[] = [
  trivetMoon,
  trivetMoonDust,
  trivetMars,
  steepleMoon,
  steepleMoonDust,
  steepleMars,
  bolsterMoon,
  bolsterMoonDust,
];

/** The table of tip limits of a shipped lander on a world, for the ground of a site or for rigid ground; undefined where none is shipped. */
export function findLimits(landerId: string, worldId: string, site?: Site): LimitTable | undefined {
  const softSite = site?.ground.soil === undefined ? undefined : site.id;
  const file = FILES.find(
    (candidate) => candidate.lander === landerId && candidate.world === worldId && candidate.site === softSite,
  );
  const lander = findLander(landerId);
  if (file === undefined || lander === undefined) return undefined;
  const axes = limitAxes(lander);
  const expected = axes.slopes.length * axes.descentRates.length * axes.leans.length * axes.masses.length;
  if (file.limits.length !== expected)
    throw new Error(`limits of ${landerId} on ${worldId}: expected ${expected} limits, got ${file.limits.length}`);
  return { ...axes, limits: file.limits };
}
