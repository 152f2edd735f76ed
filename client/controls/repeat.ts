/** A control that is held goes on by itself: after this long, and then this often [ms]. Slower than the keys of most keyboards. */
export const REPEAT = { afterMs: 400, everyMs: 100 } as const;

/**
 * A press of the button acts once; while it is held down, by one finger or the first button of a mouse, it acts again and again. By keyboard a press
 * stays one press.
 */
export function repeatWhileHeld(node: HTMLButtonElement, act: () => void): void {
  let timer: ReturnType<typeof setTimeout> | undefined;
  let pointer: number | undefined;
  let hasRepeated = false;
  const stop = () => {
    clearTimeout(timer);
    pointer = undefined;
    removeEventListener('blur', giveUp);
  };
  /** No click follows. */
  const giveUp = () => {
    stop();
    hasRepeated = false;
  };
  const again = () => {
    if (node.disabled || !node.isConnected) {
      giveUp();
      return;
    }
    hasRepeated = true;
    act();
    timer = setTimeout(again, REPEAT.everyMs);
  };
  node.addEventListener('pointerdown', ({ pointerId, isPrimary, button }) => {
    if (!isPrimary || button !== 0 || pointer !== undefined) return;
    pointer = pointerId;
    hasRepeated = false;
    // a finger is bound to what it touched first: it must be able to slide off
    if (node.hasPointerCapture(pointerId)) node.releasePointerCapture(pointerId);
    addEventListener('blur', giveUp);
    timer = setTimeout(again, REPEAT.afterMs);
  });
  node.addEventListener('pointerup', ({ pointerId }) => {
    if (pointerId === pointer) stop();
  });
  for (const end of ['pointercancel', 'pointerleave'] as const)
    node.addEventListener(end, ({ pointerId }) => {
      if (pointerId === pointer) giveUp();
    });
  // what a long touch brings up elsewhere
  node.addEventListener('contextmenu', (event) => {
    if (pointer !== undefined) event.preventDefault();
  });
  node.addEventListener('click', ({ detail }) => {
    // the end of a hold is no press of its own; a press by keyboard always is
    const isEndOfHold = hasRepeated && detail > 0;
    hasRepeated = false;
    if (!isEndOfHold) act();
  });
}
