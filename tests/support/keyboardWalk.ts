import type { Page } from 'playwright';

/** One stop on the way: which control has the focus, and what is wrong with how it shows it. */
interface Stop {
  readonly at: number;
  readonly fault: string | undefined;
}

/** A page has fewer controls than this. */
const MOST_STOPS = 250;

/**
 * What somebody who goes by keyboard cannot do on the page as it is shown now, in words: controls that Tab does not reach, and those that do not show that they have the
 * focus or are covered while they have it. In an open dialog only what is in it counts.
 */
export async function keyboardFaults(page: Page): Promise<readonly string[]> {
  const names = await page.evaluate(listControls);
  if (names.length === 0) throw new Error('No control was found to go to');
  const reached = new Set<number>();
  const found = new Set<string>();
  for (let stops = 0; stops < MOST_STOPS && reached.size < names.length; stops += 1) {
    await page.keyboard.press('Tab');
    const { at, fault }: Stop = await page.evaluate(lookAtFocus);
    if (at >= 0) reached.add(at);
    if (fault !== undefined) found.add(fault);
  }
  const missed = names.filter((_, i) => !reached.has(i)).map((name) => `Tab does not reach ${name}`);
  return [...found, ...missed];
}

/** Runs in the page. Numbers the controls, one for all of a group of radio buttons, and names them. */
function listControls(): readonly string[] {
  const around = document.querySelector('dialog:modal') ?? document.body;
  const names: string[] = [];
  const groups = new Map<string, number>();
  for (const node of document.querySelectorAll('[data-walk]')) node.removeAttribute('data-walk');
  for (const node of around.querySelectorAll<HTMLElement>('a[href], button, input, select, textarea, summary')) {
    const isOpen =
      node.checkVisibility({ visibilityProperty: true }) &&
      !node.matches(':disabled') &&
      node.closest('[inert]') === null;
    if (!isOpen || node.tabIndex < 0) continue;
    const group = node instanceof HTMLInputElement && node.type === 'radio' ? node.name : '';
    const known = groups.get(group);
    if (group !== '' && known !== undefined) {
      node.dataset['walk'] = String(known);
      continue;
    }
    if (group !== '') groups.set(group, names.length);
    node.dataset['walk'] = String(names.length);
    names.push(
      `${node.tagName.toLowerCase()} "${node.ariaLabel ?? (node.textContent?.trim().slice(0, 60) || node.getAttribute('name') || node.id)}"`,
    );
  }
  return names;
}

/** Runs in the page. */
function lookAtFocus(): Stop {
  const node = document.activeElement;
  if (!(node instanceof HTMLElement) || node === document.body) return { at: -1, fault: undefined };
  const name = `${node.tagName.toLowerCase()}.${node.className} "${node.ariaLabel ?? node.textContent?.trim().slice(0, 60) ?? ''}"`;
  const label = node.closest('label');
  // a choice may be shown by its label, or by what is drawn beside it
  const shown = [node, label, node.nextElementSibling, node.parentElement].filter((one) => one !== null);
  const isMarked = shown.some((one) => {
    const { outlineStyle, outlineWidth, boxShadow } = getComputedStyle(one);
    return (outlineStyle !== 'none' && outlineWidth !== '0px') || (one === node && boxShadow !== 'none');
  });
  const isMet = [node, label ?? node].some((one) => {
    const { left, top, width, height } = one.getBoundingClientRect();
    return [0.5, 0.1, 0.9].some((x) =>
      [0.5, 0.1, 0.9].some((y) => one.contains(document.elementFromPoint(left + x * width, top + y * height))),
    );
  });
  const fault = isMarked
    ? isMet
      ? undefined
      : `covered while it has the focus: ${name}`
    : `does not show its focus: ${name}`;
  return { at: Number(node.dataset['walk'] ?? -1), fault };
}
