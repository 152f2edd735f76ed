/** How each of its lines begins. */
export const FOCUS_LOST = 'the focus was lost from ';

/**
 * Runs in a page: says on its console when what had the focus goes away and nothing else gets it, which throws whoever goes by keyboard or reader back to the
 * top of the page. A press of the mouse beside all controls may let go of it.
 */
export function reportLostFocus(): void {
  const PATIENCE_FRAMES = 2;
  let held = '';
  let framesWithout = 0;
  let framesAfterResize = Infinity;
  const hold = (node: Element) => {
    held = `${node.tagName.toLowerCase()} "${node.ariaLabel ?? node.textContent?.trim().slice(0, 60) ?? ''}"`;
    framesWithout = 0;
  };
  document.addEventListener('focusin', ({ target }) => {
    if (target instanceof Element) hold(target);
  });
  document.addEventListener('mousedown', () => {
    setTimeout(() => {
      if (document.activeElement === document.body) held = '';
    });
  });
  // what has no place in a window of another size cannot keep it
  addEventListener('resize', () => (framesAfterResize = 0));
  // from the last control Tab leads out of the page
  document.addEventListener('keydown', ({ key }) => {
    if (key === 'Tab') held = '';
  });
  const look = () => {
    framesAfterResize += 1;
    const { activeElement: now } = document;
    const isNothing = now === null || now === document.body;
    if (isNothing && framesAfterResize <= PATIENCE_FRAMES) held = '';
    if (isNothing && held !== '') framesWithout += 1;
    if (framesWithout === PATIENCE_FRAMES) {
      console.info(`the focus was lost from ${held}`);
      held = '';
      framesWithout = 0;
    }
    if (!isNothing) framesWithout = 0;
    requestAnimationFrame(look);
  };
  requestAnimationFrame(look);
}
