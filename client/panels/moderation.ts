import type { OtherView, TableView } from '../../engine/table/index.ts';
import { MODERATION } from '../text/en.ts';
import { button, element, say } from './element.ts';
import type { Ask } from './seatCard.ts';
import '../styles/moderation.css';

interface Moderation {
  readonly part: HTMLElement;
  refresh(view: TableView): void;
}

/** Who may be here: for everybody whether the table is locked, and for whoever runs it what locks it, and what sends somebody away. */
export function createModeration(ask: Ask): Moderation {
  const locked = element('p', { class: 'locked', role: 'status' });
  const lock = createLock(ask);
  const list = element('ul', { 'aria-label': MODERATION.here });
  const acts = element('details', {}, element('summary', {}, MODERATION.summary), lock.part, list);
  let shown = '';
  return {
    part: element('div', { class: 'moderation' }, locked, acts),
    refresh(view) {
      const { others, you } = view;
      say(locked, view.locked ? MODERATION.locked : '');
      acts.hidden = !you.runs;
      lock.refresh(view);
      const now = others.map(({ id, name }) => `${id} ${name}`).join('\n');
      if (now !== shown) list.replaceChildren(...others.map((other) => personRow(other, ask)));
      shown = now;
    },
  };
}

/** Locks the table, or opens it again. */
export function createLock(ask: Ask): { readonly part: HTMLButtonElement; refresh(view: TableView): void } {
  let isLocked = false;
  const part = button(MODERATION.lock, () => ask({ kind: 'setLock', locked: !isLocked }));
  return {
    part,
    refresh(view) {
      isLocked = view.locked;
      part.hidden = !view.you.runs;
      say(part, isLocked ? MODERATION.unlock : MODERATION.lock);
    },
  };
}

/** Pressed twice: the first press asks. */
function personRow({ id, name }: OtherView, ask: Ask): HTMLElement {
  const away = button(MODERATION.sendAway, () => {
    if (away.dataset['sure'] === undefined) {
      away.dataset['sure'] = '';
      say(away, MODERATION.sure);
      away.setAttribute('aria-label', MODERATION.sureOf(name));
    } else ask({ kind: 'remove', member: id });
  });
  const calm = () => {
    delete away.dataset['sure'];
    say(away, MODERATION.sendAway);
    away.setAttribute('aria-label', MODERATION.sendAwayName(name));
  };
  away.addEventListener('blur', calm);
  calm();
  return element('li', {}, element('span', {}, name), away);
}
