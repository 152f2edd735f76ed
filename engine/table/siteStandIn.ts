import { groundRise, groundSpan, type Terrain } from '../ground/terrain.ts';
import { atan } from '../math/trig.ts';
import { TICK_RATE } from '../world/constants.ts';
import type { DescentState } from '../world/descent.ts';
import type { SiteNotes } from './siteNotes.ts';

/** The stand-in looks at the map for so long before it marks a spot [tick], and does not change it: 3 s. */
const LOOKING = 3 * TICK_RATE;
/** Lower than this it marks none: there is no time left to go there [m]. */
const TOO_LOW = 20;
/** How far a lander can be brought aside on the way down, for each meter of height [-], and at most [m]. */
const REACH_PER_HEIGHT = 0.5;
const REACH = 50;
/** The drift is taken out within about this time [s]. */
const DRIFT_TIME = 3;
/** A lander comes down within this of its spot [m]: the steepest ground in there counts. */
const ASTRAY = 3;
/** Ground that is flatter than this is good enough as it is [rad]: 5 deg, which any lander of ours bears. */
const GOOD_ENOUGH = (5 * Math.PI) / 180;
/** The spot must be flatter than the ground that would be met by this [rad]: 1.5 deg, what the posts of a map leave open. */
const WORTH_IT = (1.5 * Math.PI) / 180;
/** Of two spots the nearer, unless the farther is flatter by this for each meter [rad/m]: 0.02 deg. */
const PER_METER = (0.02 * Math.PI) / 180;

/** What the stand-in at Site says in this tick of the descent: it marks the flattest ground within reach, where that is worth going. It reads the map. */
export function noteByMap(notes: SiteNotes, map: Terrain, state: DescentState): SiteNotes {
  if (state.tick !== LOOKING || notes.spot !== undefined || state.height < TOO_LOW) return notes;
  const [first, last] = groundSpan(map);
  const half = halfStance(state);
  const margin = half + ASTRAY + 1;
  const expected = Math.round(Math.max(first + margin, Math.min(last - margin, headedFor(state))));
  const reach = Math.min(REACH, REACH_PER_HEIGHT * state.height);
  const steepest = (x: number) => steepestAbout(map, x, half);
  if (steepest(expected) < GOOD_ENOUGH) return notes;
  let best = expected;
  let least = steepest(expected) - WORTH_IT;
  for (let aside = 1; aside <= reach; aside++)
    for (const x of [expected - aside, expected + aside]) {
      if (x < first + margin || x > last - margin) continue;
      const cost = steepest(x) + PER_METER * aside;
      if (cost >= least) continue;
      least = cost;
      best = x;
    }
  return best === expected ? notes : { ...notes, spot: { meters: best, approach: 'either way' } };
}

/** Where it comes down if the drift is taken out now [m]. */
export function headedFor({ x, vx }: DescentState): number {
  return x + (vx * DRIFT_TIME) / 2;
}

/** Steepest slope from foot to foot that the lander may find within ASTRAY of a place [rad]. */
function steepestAbout(map: Terrain, x: number, half: number): number {
  let steepest = 0;
  for (let off = -ASTRAY; off <= ASTRAY; off++)
    steepest = Math.max(steepest, Math.abs(atan(groundRise(map, x + off - half, x + off + half))));
  return steepest;
}

function halfStance({ legs, x }: DescentState): number {
  return legs.reduce((most, { footX }) => Math.max(most, Math.abs(footX - x)), 0.5);
}
