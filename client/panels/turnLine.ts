import type { Scorecard } from '../../engine/table/index.ts';
import { TURNED } from '../text/facing.ts';
import { seconds } from '../text/numbers.ts';
import { element } from './element.ts';

/** That the lander was turned about its long axis, when and how far; nothing where nobody ordered it. */
export function turnLine(card: Scorecard): HTMLElement | undefined {
  const words = turnedWords(card);
  return words === undefined ? undefined : element('p', { class: 'why' }, words);
}

export function turnedWords({ facing }: Pick<Scorecard, 'facing'>): string | undefined {
  if (facing === undefined) return undefined;
  const { steps, orderedAfter, doneAfter } = facing;
  const ordered = seconds(orderedAfter);
  return doneAfter === undefined ? TURNED.notDone(ordered) : TURNED.done(steps, ordered, seconds(doneAfter));
}
