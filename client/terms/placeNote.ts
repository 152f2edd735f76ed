/** A card of which nothing is to be covered while somebody works with it. */
const WORKED_WITH = '.own-card, .others-card, .seat-card, .sources-card, .talk-card, .controls, .control-seats .card';
/** In flight the drawing and the controls are left alone: what is read there lies where the coach's advice does. */
const ADVICE = '.coach:not(.turn-strip)';
/** Between the note and what it belongs to, and the edge of the window [px]. */
const GAP_PX = 6;

/** Lays a note over the advice or beside the card of a term that is worked with, and else under the term or over it; always whole in the window. */
export function placeNote(note: HTMLElement, marked: HTMLElement): void {
  const card = marked.closest(WORKED_WITH);
  const advice = document.querySelector(ADVICE);
  const { width, height } = note.getBoundingClientRect();
  const [right, bottom] = [document.documentElement.clientWidth - GAP_PX, window.innerHeight - GAP_PX];
  const [left, top] =
    card !== null && advice?.checkVisibility() === true
      ? cornerOf(advice)
      : besideOrUnder({ width, height }, marked, card, { right, bottom });
  note.style.left = `${Math.max(GAP_PX, Math.min(left, right - width))}px`;
  note.style.top = `${Math.max(GAP_PX, Math.min(top, bottom - height))}px`;
}

type Place = readonly [left: number, top: number];

function cornerOf(node: Element): Place {
  const { left, top } = node.getBoundingClientRect();
  return [left, top];
}

function besideOrUnder(
  { width, height }: { readonly width: number; readonly height: number },
  marked: HTMLElement,
  card: Element | null,
  { right, bottom }: { readonly right: number; readonly bottom: number },
): Place {
  const term = marked.getBoundingClientRect();
  const around = card?.getBoundingClientRect() ?? term;
  if (card !== null && around.right + GAP_PX + width <= right) return [around.right + GAP_PX, term.top];
  if (card !== null && around.left - GAP_PX - width >= GAP_PX) return [around.left - GAP_PX - width, term.top];
  const over = around.top - GAP_PX - height;
  // low in the window it lies over the term: at the foot of every page stands the caution
  if (around.top > bottom / 2 && over >= GAP_PX) return [term.left, over];
  return [term.left, (around.bottom + GAP_PX + height <= bottom ? around : term).bottom + GAP_PX];
}
