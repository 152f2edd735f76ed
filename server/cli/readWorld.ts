import { findWorld, WORLDS, type World } from '../../engine/worlds.ts';
import { oneLine, UsageError } from './usageError.ts';

export const WORLD_IDS = WORLDS.map((world) => world.id).join(', ');

export function readWorld(option: string, text: string): World {
  const world = findWorld(text);
  if (world === undefined) throw new UsageError(`${option}: expected one of ${WORLD_IDS}, got '${oneLine(text, 40)}'`);
  return world;
}

/** Several worlds, separated by commas, each once. */
export function readWorlds(option: string, text: string): readonly World[] {
  const worlds = text.split(',').map((word) => readWorld(option, word));
  const again = worlds.find((world, index) => worlds.indexOf(world) !== index);
  if (again !== undefined) throw new UsageError(`${option}: ${again.id} is named twice`);
  return worlds;
}
