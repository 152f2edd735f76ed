import { PACES, type TableView } from '../../engine/table/index.ts';
import { button, element, pressIfShown } from '../panels/element.ts';
import { PACE } from '../text/en.ts';
import type { CommandDesk } from './commands.ts';
import { term } from '../terms/term.ts';

interface PaceButtons {
  readonly row: HTMLElement;
  refresh(view: TableView, mayChange: boolean): void;
  /** The next slower or faster one. */
  step(direction: 'slower' | 'faster'): void;
}

/** How fast the clock runs: one small button a pace. */
export function createPaceButtons(desk: CommandDesk): PaceButtons {
  const buttons = PACES.map((pace) => {
    const node = button(PACE.short(pace), () => desk.ask({ kind: 'setPace', pace }), {
      'aria-label': `${PACE.short(pace)} ${PACE.words[pace]}`,
    });
    return { pace, node };
  });
  const row = element(
    'div',
    { class: 'pace', role: 'group', 'aria-label': PACE.label },
    element('span', {}, term('pace', PACE.label)),
    ...buttons.map(({ node }) => node),
  );
  return {
    row,
    step(direction) {
      const at = buttons.findIndex(({ node }) => node.ariaPressed === 'true');
      // the fastest stands first
      const next = buttons[at + (direction === 'slower' ? 1 : -1)];
      if (next !== undefined) pressIfShown(next.node);
    },
    refresh(view, mayChange) {
      for (const { pace, node } of buttons) {
        node.setAttribute('aria-pressed', String(view.pace === pace));
        node.disabled = !mayChange;
      }
    },
  };
}
