import type { Page } from 'playwright';

/** Windows from the narrowest up to where a page has room. */
const WIDTHS = [
  { width: 320, height: 568 },
  { width: 360, height: 640 },
  { width: 390, height: 844 },
  { width: 768, height: 1024 },
] as const;

/** Boxes may share so much [px]: those of letters are larger than the letters. */
const SLACK = 2;

/** The box of some letters, or of something that is pressed, as far as it is shown [px]. */
interface Box {
  readonly name: string;
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
  /** On the drawing. */
  readonly isDrawn: boolean;
  /** Stays in place over what is scrolled below it. */
  readonly isStuck: boolean;
  /** Elements around it and itself, by number. */
  readonly within: readonly number[];
}

/** From now on the page remembers what is lettered on its drawings, frame by frame. */
export async function watchLettering(page: Page): Promise<void> {
  await page.evaluate(() => {
    let frame: { readonly canvas: HTMLCanvasElement }[] = [];
    let lettered: typeof frame = [];
    // eslint-disable-next-line typescript/unbound-method -- called on one canvas after the other
    const write = CanvasRenderingContext2D.prototype.fillText;
    CanvasRenderingContext2D.prototype.fillText = function fillText(words: string, x: number, y: number) {
      const size = this.measureText(words);
      const { a, d, e, f } = this.getTransform();
      const left = e + a * (x - size.actualBoundingBoxLeft);
      const top = f + d * (y - size.actualBoundingBoxAscent);
      const right = e + a * (x + size.actualBoundingBoxRight);
      const bottom = f + d * (y + size.actualBoundingBoxDescent);
      const at = { canvas: this.canvas, words, left, right, top, bottom };
      frame.push(at);
      write.call(this, words, x, y);
    };
    const turn = () => {
      // a drawing that has not changed is not drawn again: its letters are still there
      const drawn = new Set(frame.map(({ canvas }) => canvas));
      lettered = [...lettered.filter(({ canvas }) => !drawn.has(canvas)), ...frame];
      Object.assign(window, { lettered });
      frame = [];
      requestAnimationFrame(turn);
    };
    requestAnimationFrame(turn);
  });
}

/** What lies on top of one another at any of the widths. */
export async function overprintsAtWidths(page: Page): Promise<readonly string[]> {
  const found: string[] = [];
  for (const size of WIDTHS) {
    await page.setViewportSize(size);
    // the drawing follows in a frame, its figures after a quarter of a second
    await page.waitForTimeout(400);
    found.push(...(await overprints(page)).map((words) => `${size.width}: ${words}`));
  }
  return found;
}

/**
 * What lies on top of one another as the page is shown now, or leaves the window sideways, in words; nothing where all is well. Goes through the boxes of all
 * letters and of all that is pressed, on the page and on its drawings.
 */
export async function overprints(page: Page): Promise<readonly string[]> {
  const { boxes, windowWidth, scrolling, cut } = await boxesOf(page);
  if (boxes.length < 3) throw new Error(`Only ${boxes.length} boxes were found: nothing was looked at`);
  const found = [...scrolling.map((part) => `${part} scrolls sideways`), ...cut.map((name) => `"${name}" is cut off`)];
  for (const [i, a] of boxes.entries()) {
    if (a.left < -1 || a.right > windowWidth + 1) found.push(`"${a.name}" leaves the window`);
    found.push(
      ...boxes
        .slice(i + 1)
        .filter((b) => meet(a, b))
        .map((b) => `"${a.name}" over "${b.name}"`),
    );
  }
  return found;
}

function meet(a: Box, b: Box): boolean {
  const areLettersOfOneDrawing = a.isDrawn && b.isDrawn;
  const isAround = [a.within.at(-1), b.within.at(-1)].some(
    (one) => one !== undefined && a.within.includes(one) && b.within.includes(one),
  );
  if ((isAround && !areLettersOfOneDrawing) || a.isStuck !== b.isStuck) return false;
  const wide = Math.min(a.right, b.right) - Math.max(a.left, b.left);
  const tall = Math.min(a.bottom, b.bottom) - Math.max(a.top, b.top);
  return wide > SLACK && tall > SLACK;
}

/** What is covered by another sheet, or scrolled out of sight, is left out. */
function boxesOf(page: Page): Promise<{
  readonly boxes: readonly Box[];
  readonly windowWidth: number;
  readonly scrolling: readonly string[];
  readonly cut: readonly string[];
}> {
  return page.evaluate(() => {
    type Side = 'left' | 'right' | 'top' | 'bottom';
    type Rect = Readonly<Record<Side, number>>;
    interface Lettered extends Rect {
      readonly canvas: HTMLCanvasElement;
      readonly words: string;
    }
    const HIDDEN = '.unseen, .long, option, noscript';
    /** Sheets that are laid over others on purpose. */
    const COVERS = 'dialog, .sheet, .title-block, .ways, .start-block';
    const dialog = document.querySelector('dialog[open]');
    const root = dialog ?? document.body;
    const all = [...document.querySelectorAll('*')];
    const numbers = new Map(all.map((node, i) => [node, i]));
    const boxes: Box[] = [];
    const cut: string[] = [];
    const add = (node: Element, words: string, rect: Rect) => {
      let whole = rect;
      if (!node.checkVisibility({ opacityProperty: true, visibilityProperty: true })) return;
      if (node.closest(HIDDEN) !== null) return;
      let { left, right, top, bottom } = whole;
      const within: number[] = [];
      let isStuck = false;
      for (let around: Element | null = node; around !== null; around = around.parentElement) {
        within.unshift(numbers.get(around) ?? -1);
        const { overflowX, clipPath, position, display, textOverflow } = getComputedStyle(around);
        if (display === 'none') return;
        if (position === 'sticky') isStuck = true;
        // what only readers of the page are told
        if (clipPath === 'inset(50%)') return;
        if (around === node || around === document.body || overflowX === 'visible') continue;
        const edge = around.getBoundingClientRect();
        [left, right] = [Math.max(left, edge.left), Math.min(right, edge.right)];
        // words that end in dots are shortened on purpose
        if (textOverflow === 'ellipsis') whole = { ...whole, left, right };
        [top, bottom] = [Math.max(top, edge.top), Math.min(bottom, edge.bottom)];
      }
      if (right - left < 1 || bottom - top < 1) return;
      const met = document.elementFromPoint((left + right) / 2, (top + bottom) / 2);
      const cover = met?.closest(COVERS);
      if (cover !== null && cover !== undefined && !cover.contains(node)) return;
      const name = words.trim().replace(/\s+/g, ' ').slice(0, 40);
      if (left > whole.left + 2 || right < whole.right - 2) cut.push(name);
      boxes.push({ name, left, right, top, bottom, isDrawn: node instanceof HTMLCanvasElement, isStuck, within });
    };
    const walker = document.createTreeWalker(root, NodeFilter.SHOW_TEXT);
    while (walker.nextNode()) {
      const { parentElement: around, textContent: words } = walker.currentNode;
      if (around === null || words === null || words.trim() === '') continue;
      const range = document.createRange();
      range.selectNodeContents(walker.currentNode);
      // of the height of its line, letters fill the middle
      for (const { left, right, top, bottom, height } of range.getClientRects())
        add(around, words, { left, right, top: top + 0.2 * height, bottom: bottom - 0.2 * height });
    }
    for (const node of root.querySelectorAll('button, input:not([type="range"]), select, .coach, .notice'))
      add(node, node.ariaLabel ?? node.textContent ?? node.id, node.getBoundingClientRect());
    const { lettered = [] } = window as unknown as { lettered?: readonly Lettered[] };
    for (const { canvas, words, ...at } of dialog === null ? lettered : []) {
      const sheet = canvas.getBoundingClientRect();
      const ratio = canvas.width / sheet.width;
      const [left, right] = [sheet.left + at.left / ratio, sheet.left + at.right / ratio];
      const [top, bottom] = [sheet.top + at.top / ratio, sheet.top + at.bottom / ratio];
      add(canvas, `drawn: ${words}`, { left, right, top, bottom });
    }
    const scrolling = [document.documentElement, ...root.querySelectorAll('*')]
      .filter((part) => part.clientWidth > 0 && part.scrollWidth > part.clientWidth + 1)
      .filter((part) => part === document.documentElement || /auto|scroll/.test(getComputedStyle(part).overflowX))
      .map((part) => `${part.tagName.toLowerCase()}.${part.className}`);
    return { boxes, windowWidth: innerWidth, scrolling, cut };
  });
}
