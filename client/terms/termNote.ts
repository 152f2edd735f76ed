import { element } from '../panels/element.ts';
import { GLOSSARY, meaningOf, type Term } from '../text/glossary.ts';
import { placeNote } from './placeNote.ts';
import '../styles/terms.css';

/** A pointer that only passes by opens nothing; one that leaves has time to come back, or to reach the note [ms]. */
const REST_MS = 350;
const LEAVE_MS = 1200;
const ID = 'term-note';

let note: TermNote | undefined;

/** Begins to listen, once for the page. */
export function listenForTerms(): void {
  if (note !== undefined) return;
  const laid = new TermNote();
  note = laid;
  document.addEventListener('pointerover', (event) => {
    if (event.pointerType === 'mouse') laid.pointAt(event.target);
  });
  document.addEventListener('focusin', ({ target }) => {
    const marked = markedAt(target);
    laid.hide();
    // not at once: a sheet that is being shown moves the focus, and another cannot be shown meanwhile
    if (marked?.matches(':focus-visible') === true) laid.showAfter(marked, 0);
  });
  document.addEventListener('click', ({ target }) => {
    const marked = markedAt(target);
    if (marked?.matches('.term') === true) laid.show(marked);
    else if (!laid.holds(target)) laid.hide();
  });
  // before anything else that Escape closes
  document.addEventListener('keydown', (event) => event.key === 'Escape' && laid.closeByKey(event), { capture: true });
  addEventListener('resize', () => laid.hide());
}

/** The one note of the page: what a term is, as long as somebody points at it or has come to it. */
class TermNote {
  readonly #heading = element('strong', {});
  readonly #sentence = element('span', {});
  readonly #node = element(
    'div',
    { id: ID, class: 'term-note', role: 'tooltip', popover: 'manual' },
    this.#heading,
    ' ',
    this.#sentence,
  );
  /** It goes with its term, when that is hidden or laid anew. */
  readonly #watcher = new MutationObserver(() => {
    if (this.#for?.checkVisibility() !== true || !this.#node.isConnected) this.hide();
  });
  #for: HTMLElement | undefined;
  #timer: ReturnType<typeof setTimeout> | undefined;

  pointAt(target: EventTarget | null): void {
    const marked = markedAt(target);
    clearTimeout(this.#timer);
    if (marked === this.#for || this.holds(target)) return;
    if (marked !== undefined) this.showAfter(marked, REST_MS);
    // that of what has the keyboard stays
    else if (this.#for?.matches(':focus') !== true) this.#timer = setTimeout(() => this.hide(), LEAVE_MS);
  }

  showAfter(marked: HTMLElement, ms: number): void {
    clearTimeout(this.#timer);
    this.#timer = setTimeout(() => this.show(marked), ms);
  }

  show(marked: HTMLElement): void {
    const name = termOf(marked);
    clearTimeout(this.#timer);
    if (marked === this.#for || name === undefined || !marked.isConnected) return;
    this.hide();
    this.#for = marked;
    this.#heading.textContent = `${name}:`;
    this.#sentence.textContent = meaningOf(name);
    // over a modal sheet only what lies in it can be pointed at; elsewhere a reader finds it in the part of its term
    (marked.closest('dialog, section, main') ?? document.body).append(this.#node);
    if (!marked.hasAttribute('aria-describedby')) marked.setAttribute('aria-describedby', ID);
    this.#node.showPopover();
    placeNote(this.#node, marked);
    const changes = { childList: true, subtree: true, attributeFilter: ['hidden', 'open'] };
    this.#watcher.observe(document.body, changes);
  }

  hide(): void {
    clearTimeout(this.#timer);
    this.#watcher.disconnect();
    if (this.#for?.getAttribute('aria-describedby') === ID) this.#for.removeAttribute('aria-describedby');
    this.#for = undefined;
    this.#node.remove();
  }

  closeByKey(event: KeyboardEvent): void {
    if (this.#for === undefined) return;
    event.stopPropagation();
    event.preventDefault();
    this.hide();
  }

  holds(target: EventTarget | null): boolean {
    return target instanceof Node && this.#node.contains(target);
  }
}

function markedAt(target: EventTarget | null): HTMLElement | undefined {
  return (target instanceof Element ? target.closest<HTMLElement>('[data-term]') : undefined) ?? undefined;
}

function termOf({ dataset }: HTMLElement): Term | undefined {
  return GLOSSARY.find(([name]) => name === dataset['term'])?.[0];
}
