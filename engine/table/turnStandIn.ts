import { feetOf, type FootOffset } from '../estimate/index.ts';
import { groundRise, type Terrain } from '../ground/terrain.ts';
import { atan } from '../math/trig.ts';
import { TICK_DT, TICK_RATE } from '../world/constants.ts';
import type { DescentSetup, DescentState } from '../world/descent.ts';
import { facingAt, headingAt, ticksOfTurn, type Facings } from '../world/facings.ts';
import { layOutSection } from '../world/layOutSection.ts';
import { turned } from './believedFacing.ts';
import { FACING_RANGE, type SiteNotes } from './siteNotes.ts';

/** A leg that is shown not locked for so long is taken for weak [tick]: 3 s, by when the spot is marked too. */
const REACTION = 3 * TICK_RATE;
/** Then it is looked at anew so often until it is worth a turn and time allows [tick]. */
const LOOK = TICK_RATE;
/** The turn must be over so long before the ground would be met at the present rate of descent [s]; and slower than that nobody counts on [m/s]. */
const TIME_TO_SPARE = 2;
const LEAST_RATE = 0.5;
/** Ground that is flatter has no uphill worth a turn [rad]: 1.5 deg, what the posts of a map leave open. */
const SLOPED = (1.5 * Math.PI) / 180;
/** A turn brings the weak legs at least so much farther uphill, share of the half stance [-]. */
const WORTH_IT = 0.5;
/** Places that differ by less are as good [m]. */
const ALIKE = 0.1;

/** What the stand-in at Site remembers of the legs: for how long one has been shown not locked [tick]. */
export interface LegWatch {
  readonly openFor: number;
}

/** Undefined while all are shown locked, and never were otherwise. */
export function watchLegs(before: LegWatch | undefined, locked: readonly boolean[]): LegWatch | undefined {
  if (locked.every(Boolean)) return before && { openFor: 0 };
  return { openFor: (before?.openFor ?? 0) + 1 };
}

/** What the stand-in sees: the map, the descent as it is known, and which legs are shown locked. */
interface Seen {
  readonly setup: Pick<DescentSetup, 'lander' | 'propellant'>;
  readonly map: Terrain;
  readonly known: DescentState;
  readonly locked: readonly boolean[];
  /** Where it will come down [m]. */
  readonly x: number;
}

/** What the stand-in at Site orders of a lander with a leg that is not shown locked: once a descent, the shortest turn that brings that leg uphill, where the map has a slope and time allows. */
export function turnByWatch(watch: LegWatch | undefined, notes: SiteNotes, seen: Seen): SiteNotes {
  const { setup, map, known, locked, x } = seen;
  const openFor = watch?.openFor ?? 0;
  if (openFor < REACTION || (openFor - REACTION) % LOOK !== 0) return notes;
  if (notes.facing !== undefined || known.phase === 'contact') return notes;
  const { facings, halfStance } = layOutSection(setup.lander, setup.propellant);
  const slope = atan(groundRise(map, x - halfStance, x + halfStance));
  if (Math.abs(slope) < SLOPED) return notes;
  const weak = feetOf(known).filter((_, leg) => locked[leg] === false);
  const uphill = (steps: number) => Math.sign(slope) * middleOf(weak, facingAt(facings, steps).yaw);
  const steps = shortestOfBest(facings, uphill);
  const seconds = ticksOfTurn(facings, headingAt(facings, 0), steps) * TICK_DT;
  const left = known.height / Math.max(LEAST_RATE, -known.vy);
  if (uphill(steps) - uphill(0) < WORTH_IT * halfStance || seconds + TIME_TO_SPARE > left) return notes;
  return { ...notes, facing: steps };
}

/** How far to the right the middle of these feet stands once the lander has turned by so much from how it stands [m]. */
function middleOf(feet: readonly FootOffset[], yaw: number): number {
  return feet.reduce((sum, foot) => sum + turned(foot, yaw).across, 0) / feet.length;
}

function shortestOfBest(facings: Facings, uphill: (steps: number) => number): number {
  const { least, most } = FACING_RANGE;
  const choices = Array.from({ length: most - least + 1 }, (_, i) => least + i);
  const best = Math.max(...choices.map(uphill));
  const ticks = (steps: number) => ticksOfTurn(facings, headingAt(facings, 0), steps);
  const good = choices.filter((steps) => uphill(steps) > best - ALIKE);
  return good.reduce((shortest, steps) => (ticks(steps) < ticks(shortest) ? steps : shortest));
}
