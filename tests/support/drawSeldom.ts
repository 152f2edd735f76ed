/**
 * Runs in a page before its own scripts: it draws seldom, as on a slow screen. Drawing without a graphics card was most of what a browser test cost, and windows
 * of one machine took it from one another: one of 1280 x 720 in flight takes 0.8 of a core at sixty frames a second, 0.25 at twenty.
 * `apartMs`: time between two frames [ms].
 */
export function drawSeldom(apartMs: number): void {
  const ask = window.requestAnimationFrame.bind(window);
  const waiting = new Map<number, FrameRequestCallback>();
  let isAsked = false;
  let last = 0;
  const draw = (nowMs: number) => {
    isAsked = false;
    // what is asked for while a frame is drawn waits for the next one, and what is called off is not drawn
    const due = [...waiting.keys()];
    for (const handle of due) {
      const callback = waiting.get(handle);
      waiting.delete(handle);
      callback?.(nowMs);
    }
  };
  window.requestAnimationFrame = (callback) => {
    last += 1;
    waiting.set(last, callback);
    if (!isAsked) setTimeout(() => ask(draw), apartMs - (performance.now() % apartMs));
    isAsked = true;
    return last;
  };
  window.cancelAnimationFrame = (handle) => void waiting.delete(handle);
}
