import type { Change } from '../../engine/table/index.ts';
import { findWorld } from '../../engine/worlds.ts';
import { SOURCE_NAMES, WHAT_IF } from './en.ts';
import { percent, seconds, speed } from './numbers.ts';

/** What is otherwise in a fork, as it ends the question "and with ...?". */
export function changeWords({
  kind,
  source,
  part = 'engine',
  seconds: at = 0,
  tenths = 0,
  world,
  percent: stance = 100,
}: Change): string {
  const name = source === undefined ? '' : SOURCE_NAMES[source].toLowerCase();
  switch (kind) {
    case 'source healthy':
      return WHAT_IF.healthy(name);
    case 'part sound':
      return WHAT_IF.sound[part];
    case 'source rejected':
      return WHAT_IF.rejected(name, seconds(at));
    case 'descent rate':
      return WHAT_IF.descentRate(speed(tenths / 10, 1), seconds(at));
    case 'world':
      return WHAT_IF.world(findWorld(world ?? '')?.name ?? '');
    case 'stance':
      return WHAT_IF.stance(percent(stance / 100));
  }
  return kind satisfies never;
}
