import type { TablePlan } from '../../engine/table/index.ts';
import { findWorld } from '../../engine/worlds.ts';
import { findLimits } from '../limits/findLimits.ts';
import { findLander } from '../landers.ts';
import { findSite } from '../sites/findSite.ts';
import { createGround } from '../terrain/createGround.ts';

/** Usable propellant [kg]: some two minutes of hovering, for a descent of about half a minute. */
const PROPELLANT = 130;

/**
 * The first landing: Trivet, high over Saddler's Bench on the Moon, coming down a little too fast and drifting to the
 * right. The seed decides the ground alone. Playable by someone who has never done it: nothing fails, and there is
 * propellant to spare. Left alone it meets the ground at that speed and drift, over its tip limit, and may stand or fall;
 * with the engine shut down it falls from there, faster than its legs can take.
 */
export function firstLanding(seed: number): TablePlan {
  const lander = findLander('trivet');
  const site = findSite('saddlers-bench');
  const world = findWorld('moon');
  const limits = findLimits('trivet', 'moon');
  if (lander === undefined || site === undefined || world === undefined || limits === undefined)
    throw new Error('The first landing needs Trivet, Saddler’s Bench, the Moon, and the limits of Trivet there.');
  return {
    title: 'First landing',
    landerId: lander.id,
    siteId: site.id,
    worldId: world.id,
    seed,
    limits,
    setup: {
      lander,
      gravity: world.gravity,
      terrain: createGround(site, seed),
      start: { x: -45, y: 88, angle: 0, vx: 2.6, vy: -4.5, rate: 0 },
      propellant: PROPELLANT,
    },
  };
}
