import { CANVAS, Game } from 'phaser';
import { pixelRatio } from '../camera/pixelRatio.ts';
import type { DescentSource } from './descentDrawing.ts';
import { type Layout, SectionScene } from './SectionScene.ts';

/** Puts the section into its holder and keeps it as large as the holder. Returns the function that takes it away. */
export function createSectionGame(
  holder: HTMLElement,
  source: DescentSource,
  covering: () => readonly Element[],
): () => void {
  let layout = measure(holder, covering(), pixelRatio());
  const game = new Game({
    type: CANVAS,
    parent: holder,
    width: layout.width,
    height: layout.height,
    zoom: 1 / pixelRatio(),
    banner: false,
    audio: { noAudio: true },
    // the paper is drawn; the canvas itself stays clear
    transparent: true,
    autoFocus: false,
    // everything that is pressed is HTML
    input: { keyboard: false, mouse: false, touch: false, gamepad: false },
    scene: new SectionScene(source, () => layout),
  });
  const refit = () => {
    layout = measure(holder, covering(), pixelRatio());
    game.scale.setZoom(1 / pixelRatio());
    game.scale.resize(layout.width, layout.height);
  };
  // what changed before the game had started would be lost
  game.events.once('ready', refit);
  const observer = new ResizeObserver(refit);
  for (const element of [holder, ...covering()]) observer.observe(element);
  return () => {
    observer.disconnect();
    game.destroy(true);
  };
}

/** What spans at least this share of a side covers that side; smaller things are drawn around [-]. */
const SPANS = 0.6;

/** Sizes in canvas pixels. What lies along a side of the holder covers it as far as it reaches in. */
function measure(holder: HTMLElement, covering: readonly Element[], ratio: number): Layout {
  const sheet = holder.getBoundingClientRect();
  const covered = { left: 0, top: 0, right: 0, bottom: 0 };
  for (const element of covering) {
    const box = element.getBoundingClientRect();
    const wide = Math.min(box.right, sheet.right) - Math.max(box.left, sheet.left);
    const tall = Math.min(box.bottom, sheet.bottom) - Math.max(box.top, sheet.top);
    if (wide <= 0 || tall <= 0) continue;
    if (tall >= SPANS * sheet.height) {
      const isLeft = box.left - sheet.left < sheet.right - box.right;
      if (isLeft) covered.left = Math.max(covered.left, ratio * (box.right - sheet.left));
      else covered.right = Math.max(covered.right, ratio * (sheet.right - box.left));
    } else if (wide >= SPANS * sheet.width) {
      const isTop = box.top - sheet.top < sheet.bottom - box.bottom;
      if (isTop) covered.top = Math.max(covered.top, ratio * (box.bottom - sheet.top));
      else covered.bottom = Math.max(covered.bottom, ratio * (sheet.bottom - box.top));
    }
  }
  // as large as the rest of the page: its root font size is the sheet's unit of length
  const rem = Number.parseFloat(getComputedStyle(document.documentElement).fontSize);
  return {
    width: Math.max(1, Math.round(holder.clientWidth * ratio)),
    height: Math.max(1, Math.round(holder.clientHeight * ratio)),
    covered,
    unit: (rem / 16) * ratio,
  };
}
