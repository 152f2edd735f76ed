import { describe, expect, it } from 'vitest';
import type { Soil } from '../../../engine/ground/index.ts';
import { entriesOf, limitMaker } from '../../../engine/table/index.ts';
import { findWorld } from '../../../engine/worlds.ts';
import { findLimits, findSite, type Site } from '../../../levels/index.ts';
import { shippedLander } from '../../support/touchDown.ts';

/** How far an entry may lie from the limit as it is computed now [m/s]: twice the tolerance of a search, which may stop on either side. */
const CLOSE = 0.01;

/** Every so many entries are computed again: a prime, so that every slope, descent rate, lean and mass comes up. */
const SPOTS = [
  { id: 'trivet', world: 'moon', ground: 'rigid', every: 61 },
  { id: 'steeple', world: 'moon', ground: 'rigid', every: 211 },
  { id: 'bolster', world: 'moon', ground: 'rigid', every: 83 },
  { id: 'trivet', world: 'mars', ground: 'rigid', every: 167 },
  { id: 'steeple', world: 'mars', ground: 'rigid', every: 251 },
  { id: 'trivet', world: 'moon', ground: 'pinfold-plain', every: 167 },
  { id: 'bolster', world: 'moon', ground: 'pinfold-plain', every: 167 },
  { id: 'steeple', world: 'moon', ground: 'pinfold-plain', every: 251 },
] as const;

describe('the shipped tables of limits', () => {
  it.each(SPOTS)(
    '[TA17] hold what the simulation says now: $id on $world, $ground',
    ({ id, world, ground, every }) => {
      const site = findSite(ground);
      const table = findLimits(id, world, site)!;
      const { gravity } = findWorld(world)!;
      const limitOf = limitMaker({ lander: shippedLander(id), gravity, ...soilOf(site), ...table });
      const off: unknown[] = [];
      let looked = 0;
      entriesOf(table).forEach((entry, i) => {
        if (i % every !== Math.floor(every / 2)) return;
        looked += 1;
        const now = limitOf(entry);
        if (Math.abs((table.limits[i] ?? -1) - now) > CLOSE) off.push({ i, entry, stands: table.limits[i], now });
      });
      expect(looked).toBeGreaterThan(3);
      expect(off).toEqual([]);
    },
    120_000,
  );
});

function soilOf(site: Site | undefined): { readonly soil?: Soil } {
  return site?.ground.soil === undefined ? {} : { soil: site.ground.soil };
}
