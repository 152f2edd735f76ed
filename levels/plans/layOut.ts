import { assert } from '../../engine/assert.ts';
import { STANDARD_GRAVITY } from '../../engine/constants.ts';
import type { Drill } from '../../engine/drill/index.ts';
import type { Fault } from '../../engine/faults/index.ts';
import { createProblemList, report } from '../../engine/fieldReader.ts';
import { groundHeight, type Terrain } from '../../engine/ground/index.ts';
import { massProperties, tankLiquid, type Lander } from '../../engine/lander/index.ts';
import { accept, refuse, type FieldProblem, type Result } from '../../engine/result.ts';
import type { PlanChoice, TablePlan } from '../../engine/table/index.ts';
import type { StartState } from '../../engine/world/index.ts';
import { findWorld, type World } from '../../engine/worlds.ts';
import { findLimits } from '../limits/findLimits.ts';
import { findLander } from '../landers.ts';
import { findSite } from '../sites/findSite.ts';
import type { Site } from '../sites/site.ts';
import { createGround } from '../terrain/createGround.ts';
import { findStart, type Start } from './findStart.ts';
import { seededEngineDefect, seededLegDefect, type Troubled } from './seededDefect.ts';
import { seededTrouble } from './seededTrouble.ts';
import { whyNotFlown, worldsFor } from './flyable.ts';

/** Propellant is loaded in whole portions [kg]. */
const PORTION = 10;

/** Lays out what was chosen; of a drill the choice has what is flown, and the drill what is true and what is dealt. */
export function layOut(choice: PlanChoice, drill?: Drill): Result<TablePlan, readonly FieldProblem[]> {
  const lander = findLander(choice.lander);
  const site = findSite(choice.site);
  const world = findWorld(choice.world);
  const start = findStart(choice.start);
  assert(
    lander !== undefined && site !== undefined && world !== undefined && start !== undefined,
    'a choice comes from parsePlanChoice, which knows its lander, site, world and start',
  );
  const problems = problemsOf(lander, world);
  if (problems.length > 0) return refuse(problems);
  const surveyed = createGround(site, choice.seed);
  const terrain = drill === undefined ? surveyed : steepened(surveyed, site, choice.seed, drill.truth.steeperDeg);
  const limits = findLimits(lander.id, world.id, site);
  const propellant = propellantFor(lander, world, start.hoverSeconds);
  // what a drill deals stands in its event list, and comes with it
  const faults = drill === undefined ? faultsOf(choice, { seed: choice.seed, start, lander, propellant }) : [];
  return accept({
    title: drill?.title ?? `${lander.name} over ${site.name}`,
    landerId: lander.id,
    siteId: site.id,
    worldId: world.id,
    seed: choice.seed,
    choice,
    ...(drill && { drill }),
    ...(limits === undefined ? {} : { limits }),
    setup: {
      lander,
      gravity: world.gravity,
      terrain,
      start: startOver(terrain, site, lander, start),
      propellant,
      ...(faults !== undefined && { faults }),
    },
    ...(faults !== undefined && { instruments: { seed: choice.seed, standIns: 'awake', ...(drill && { surveyed }) } }),
  });
}

/** What goes wrong; undefined where nothing does, and all is true that is shown. */
function faultsOf({ sensorTrouble }: PlanChoice, troubled: Troubled): readonly Fault[] | undefined {
  switch (sensorTrouble) {
    case 'none':
      return undefined;
    case 'seeded':
      return [seededTrouble(troubled.seed, troubled.start)];
    case 'engine':
      return seededEngineDefect(troubled);
    case 'legs':
      return seededLegDefect(troubled);
  }
  return sensorTrouble satisfies never;
}

/** Every slope steeper by so much, level where it was level, at the same height where the descent begins. */
function steepened(surveyed: Terrain, site: Site, seed: number, steeperDeg: number): Terrain {
  if (steeperDeg === 0) return surveyed;
  const steeper = (steeperDeg * Math.PI) / 180;
  const slopes = site.ground.slopes.map((piece) => ({
    ...piece,
    slope: piece.slope + Math.sign(piece.slope) * steeper,
  }));
  const terrain = createGround({ ...site, ground: { ...site.ground, slopes } }, seed);
  const lift = groundHeight(surveyed, site.startX) - groundHeight(terrain, site.startX);
  return { ...terrain, heights: terrain.heights.map((height) => height + lift) };
}

function problemsOf(lander: Lander, world: World): readonly FieldProblem[] {
  const list = createProblemList('plan');
  const why = whyNotFlown(lander, world);
  const flown = worldsFor(lander).map(({ name }) => name);
  if (why !== undefined)
    report(list, 'not-flyable', {
      path: 'world',
      expected: `one that ${lander.name} can fly: ${flown.join(', ')}`,
      came: why,
    });
  return list.problems;
}

/** Over the place where descents to this site begin, upright, the feet at their height above the highest ground under the lander. */
function startOver(terrain: Terrain, { startX }: Site, lander: Lander, start: Start): StartState {
  const reach = Math.max(...lander.legs.map(({ footpad: [x, y] }) => Math.sqrt(x * x + y * y)));
  const y = highestWithin(terrain, startX - reach, startX + reach) + start.height + massProperties(lander).center[2];
  return { x: startX, y, angle: 0, vx: start.drift, vy: -start.descentRate, rate: 0 };
}

/** Highest ground from one place to another [m]: at either, or at a height between them. */
function highestWithin(terrain: Terrain, from: number, to: number): number {
  const { firstX, spacing } = terrain;
  let highest = Math.max(groundHeight(terrain, from), groundHeight(terrain, to));
  for (let i = Math.ceil((from - firstX) / spacing); firstX + i * spacing < to; i++)
    highest = Math.max(highest, groundHeight(terrain, firstX + i * spacing));
  return highest;
}

/** Usable propellant: what a hover at full weight burns in so many seconds, in whole portions, and no more than is aboard [kg]. */
function propellantFor(lander: Lander, world: World, hoverSeconds: number): number {
  const perSecond = (massProperties(lander).mass * world.gravity) / (lander.engine.specificImpulse * STANDARD_GRAVITY);
  const aboard = lander.tanks.reduce((sum, tank) => sum + tankLiquid(tank).mass, 0);
  const portions = Math.ceil((perSecond * hoverSeconds) / PORTION);
  return Math.min(PORTION * portions, PORTION * Math.floor(aboard / PORTION));
}
