import type { TableView } from '../../engine/table/index.ts';
import type { World } from '../../engine/worlds.ts';
import { EXERCISE, PACE, TITLE_BLOCK } from '../text/en.ts';
import { acceleration, clock } from '../text/numbers.ts';
import { element, entry, say } from './element.ts';
import { descentSeconds } from './readings.ts';

export interface TitleBlock {
  readonly block: HTMLElement;
  refresh(view: TableView): void;
}

/** The title block of the sheet: what is drawn, on which table, and that it is an exercise. */
export function createTitleBlock(options: {
  readonly site: string;
  readonly lander: string;
  readonly world: World;
  readonly code: string | undefined;
}): TitleBlock {
  const time = element('span', {});
  const world = element('span', {});
  const block = element(
    'section',
    { class: 'title-block', 'aria-label': TITLE_BLOCK.label },
    element(
      'p',
      { class: 'title-head' },
      element('span', {}, TITLE_BLOCK.programme),
      element('strong', {}, TITLE_BLOCK.section(options.site)),
    ),
    element(
      'dl',
      {},
      entry(TITLE_BLOCK.lander, options.lander),
      entry(TITLE_BLOCK.world, world),
      entry(TITLE_BLOCK.code, options.code ?? TITLE_BLOCK.solo),
      entry(TITLE_BLOCK.clock, time),
    ),
    exerciseLine(),
  );
  return {
    block,
    refresh(view) {
      say(world, `${options.world.name} ${acceleration(options.world.gravity)}`);
      say(time, TITLE_BLOCK.clockValue(clock(descentSeconds(view)), view.pace === 1 ? '' : PACE.short(view.pace)));
    },
  };
}

/** The caution that stands on every screen and print. */
export function exerciseLine(): HTMLElement {
  return element('p', { class: 'exercise' }, element('strong', {}, EXERCISE.mark), ` ${EXERCISE.line}`);
}
