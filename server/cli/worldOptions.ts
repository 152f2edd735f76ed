import type { Command } from 'commander';
import type { ConditionOptions } from './condition.ts';
import { GRAVITY, quantityParser, textParser } from './quantity.ts';
import { WORLD_IDS } from './readWorld.ts';

export type WorldOptions = Pick<ConditionOptions, 'world' | 'gravity'>;

export function addWorldOptions(command: Command, fallback = 'moon'): Command {
  return command
    .optionsGroup('World:')
    .option('--world <name>', `one of ${WORLD_IDS} (default: ${fallback})`, textParser)
    .option('--gravity <m/s^2>', 'gravity, in place of a world', quantityParser(GRAVITY));
}

/** World or gravity alone, for the parts of the closed forms that know them. */
export function worldOf({ world, gravity }: WorldOptions): WorldOptions {
  return { ...(world !== undefined && { world }), ...(gravity !== undefined && { gravity }) };
}
