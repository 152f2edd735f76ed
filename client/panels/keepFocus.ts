/**
 * Makes a change that may take away what has the focus: then the next thing that can be pressed there gets it, else the card around it. Whoever goes by keyboard is not
 * thrown back to the top of the page.
 */
export function keepFocus(holder: HTMLElement, change: () => void): void {
  const hadFocus = holder.contains(document.activeElement);
  change();
  const now = document.activeElement;
  if (!hadFocus || (now instanceof HTMLElement && holder.contains(now) && !now.hidden)) return;
  const next =
    holder.querySelector<HTMLElement>('button:not([hidden], :disabled)') ?? holder.closest<HTMLElement>('.card');
  if (next instanceof HTMLButtonElement) next.focus({ preventScroll: true });
  else if (next !== null) {
    next.tabIndex = -1;
    next.focus({ preventScroll: true });
  }
}
