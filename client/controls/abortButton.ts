import { button, element, pressIfShown, say } from '../panels/element.ts';
import { CONTROLS } from '../text/en.ts';
import { explained } from '../terms/term.ts';

/** The second press counts for so long [ms]: enough to read what it does. */
const SURE_MS = 6000;

/** Gives the landing up in two presses of one button, by hand or by key: the first one says what the second one does. */
export function createAbortButton(abort: () => void): {
  readonly nodes: readonly HTMLElement[];
  refresh(isOpen: boolean): void;
  press(): void;
} {
  let timer: ReturnType<typeof setTimeout> | undefined;
  // told aloud: the name of a button that changes under the finger is not
  const told = element('span', { class: 'unseen', role: 'status' });
  const show = (isSure: boolean) => {
    clearTimeout(timer);
    timer = isSure ? setTimeout(() => show(false), SURE_MS) : undefined;
    say(node, isSure ? CONTROLS.abortSure : CONTROLS.abort);
    node.ariaLabel = isSure ? CONTROLS.abortSurely : CONTROLS.abortFully;
    node.dataset['sure'] = String(isSure);
    say(told, isSure ? CONTROLS.abortSurely : '');
  };
  const node = button(CONTROLS.abort, () => {
    const isSure = timer !== undefined;
    show(!isSure);
    if (isSure) abort();
  });
  node.className = 'abort';
  explained(node, 'abort');
  show(false);
  return {
    nodes: [node, told],
    press: () => pressIfShown(node),
    refresh(isOpen) {
      node.disabled = !isOpen;
      if (!isOpen && timer !== undefined) show(false);
    },
  };
}
