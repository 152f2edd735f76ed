/** What can have the focus and does something. */
const CONTROLS = 'button, input, select, textarea, summary, a[href]';
/** What can be told as a whole where a control in it is gone. */
const PLACES = 'li, form, section, .card, .sheet';

/**
 * Makes a change that may take away what has the focus. Then the control of the same name that came in its place has it, else what lies around it, else the heading of the
 * page: whoever goes by keyboard is not thrown back to the top. `next`: the first control that is left there comes before what lies around it, where one press follows the other.
 */
export function keepFocus(holder: HTMLElement, change: () => void, wants: 'place' | 'next' = 'place'): void {
  const had = document.activeElement;
  if (!(had instanceof HTMLElement) || !holder.contains(had)) {
    change();
    return;
  }
  const around = trailOf(had);
  const name = nameOf(had);
  change();
  const now = document.activeElement;
  // somebody gave it to another on purpose
  if (now !== had && now !== document.body && now !== null) return;
  if (canHold(had)) {
    if (now !== had) had.focus({ preventScroll: true });
    return;
  }
  const places = around.filter((place) => place.isConnected && place.checkVisibility({ visibilityProperty: true }));
  const heir =
    twinOf(had, name, places) ??
    (wants === 'next' ? controlsIn(holder)[0] : undefined) ??
    places.find((place) => place.matches(PLACES)) ??
    holder.querySelector<HTMLElement>('h1');
  if (heir === null) return;
  if (!heir.matches(CONTROLS)) heir.tabIndex = -1;
  heir.focus({ preventScroll: true });
}

function trailOf(node: HTMLElement): readonly HTMLElement[] {
  const trail: HTMLElement[] = [];
  for (let around = node.parentElement; around !== null; around = around.parentElement) trail.push(around);
  return trail;
}

function canHold(node: HTMLElement): boolean {
  return (
    node.isConnected && node.checkVisibility({ visibilityProperty: true }) && !node.matches(':disabled, [inert] *')
  );
}

function controlsIn(place: HTMLElement): readonly HTMLElement[] {
  return [...place.querySelectorAll<HTMLElement>(CONTROLS)].filter(canHold);
}

/** The nearest control of its kind with its name. */
function twinOf(had: HTMLElement, name: string, places: readonly HTMLElement[]): HTMLElement | undefined {
  for (const place of places) {
    const twin = controlsIn(place).find((one) => one.tagName === had.tagName && nameOf(one) === name);
    if (twin !== undefined) return twin;
  }
  return undefined;
}

function nameOf(node: HTMLElement): string {
  return node.ariaLabel ?? node.closest('label')?.textContent ?? node.textContent ?? '';
}
