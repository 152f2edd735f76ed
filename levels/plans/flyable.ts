import { massRange, type Lander } from '../../engine/lander/index.ts';
import { WORLDS, type World } from '../../engine/worlds.ts';

/**
 * Full thrust must be at least so many times the weight with full tanks [-]. At 1.25 a quarter of the weight is left to brake with: on the Moon 0.4 m/s²,
 * enough to stop 4.5 m/s in 25 m. Chosen, no source.
 */
const LEAST_THRUST_TO_WEIGHT = 1.25;

/**
 * The least burn must be at most so many times the weight with empty tanks [-], or the lander climbs with its engine at the minimum and can come down
 * with it off alone. At 0.8 it still falls at a fifth of gravity. Chosen, no source.
 */
const MOST_LEAST_BURN = 0.8;

/**
 * Worlds whose air carries a good part of a lander's weight at the speeds flown here. The played world has no air; that of Mars, some 0.02 kg/m³
 * (from memory), takes under a thousandth of the weight at 6 m/s.
 */
const THICK_AIR: readonly string[] = ['venus', 'earth', 'titan'];

/** Why a lander cannot be flown on a world, in words; undefined when it can. */
export function whyNotFlown(lander: Lander, world: World): string | undefined {
  const { name, engine } = lander;
  const { empty, full } = massRange(lander);
  const most = engine.maxThrust / (full * world.gravity);
  const least = engine.minThrust / (empty * world.gravity);
  if (most < LEAST_THRUST_TO_WEIGHT)
    return `${world.name}, where the engine of ${name} gives ${most.toFixed(2)} times its weight; it takes ${LEAST_THRUST_TO_WEIGHT} to fly`;
  if (least > MOST_LEAST_BURN)
    return `${world.name}, where the least burn of ${name} is ${least.toFixed(2)} times its weight; at most ${MOST_LEAST_BURN} lets it come down`;
  if (THICK_AIR.includes(world.id)) return `${world.name}, whose air is too thick to be left out`;
  return undefined;
}

/** The worlds on which a lander can be flown, in the order of pickers. */
export function worldsFor(lander: Lander): readonly World[] {
  return WORLDS.filter((world) => whyNotFlown(lander, world) === undefined);
}
