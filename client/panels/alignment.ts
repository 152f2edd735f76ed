import { ALIGNING_TICKS, type TableView } from '../../engine/table/index.ts';
import { TICK_RATE } from '../../engine/world/index.ts';
import { SENSORS_CARD } from '../text/en.ts';
import { seconds } from '../text/numbers.ts';
import { button, element, say } from './element.ts';
import type { Ask } from './seatCard.ts';

/** [s] */
const ALIGNED_IN = ALIGNING_TICKS / TICK_RATE;

/** Starts the inertial unit afresh, and says how long that takes still, or why it does not begin. */
export function createAlignment(ask: Ask): { readonly line: HTMLElement; refresh(view: TableView): void } {
  const align = button(SENSORS_CARD.align, () => ask({ kind: 'realign' }), { class: 'align' });
  const words = element('span', { role: 'status' });
  return {
    line: element('p', { class: 'alignment' }, align, words),
    refresh({ aligning, stage }) {
      align.disabled = stage !== 'descending' || aligning !== undefined;
      say(words, alignmentWords(aligning));
    },
  };
}

/** `left` [s], absent where nobody asked for it. Nothing of it has passed while the lander leans or turns. */
export function alignmentWords(left: number | undefined): string {
  if (left === undefined) return SENSORS_CARD.alignHint(seconds(ALIGNED_IN));
  return left >= ALIGNED_IN ? SENSORS_CARD.alignWaits : SENSORS_CARD.aligning(seconds(Math.ceil(left)));
}
