import type { Command } from 'commander';
import type { ConditionOptions } from './condition.ts';
import { addField } from './fieldOptions.ts';
import { textParser } from './quantity.ts';
import { WORLD_IDS } from './readWorld.ts';

export type WorldOptions = Pick<ConditionOptions, 'world' | 'gravity'>;

export function addWorldOptions(command: Command, fallback = 'moon'): Command {
  command.optionsGroup('World:');
  command.option('--world <name>', `one of ${WORLD_IDS} (default: ${fallback})`, textParser);
  return addField(command, 'gravity');
}

/** World or gravity alone, for the parts of the closed forms that know them. */
export function worldOf({ world, gravity }: WorldOptions): WorldOptions {
  return { ...(world !== undefined && { world }), ...(gravity !== undefined && { gravity }) };
}
