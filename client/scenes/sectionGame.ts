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
    scene: new SectionScene(source, () => layout),
  });
  const refit = () => {
    layout = measure(holder, covering(), pixelRatio());
    game.scale.setZoom(1 / pixelRatio());
    game.scale.resize(layout.width, layout.height);
  };
  const observer = new ResizeObserver(refit);
  for (const element of [holder, ...covering()]) observer.observe(element);
  return () => {
    observer.disconnect();
    game.destroy(true);
  };
}

/** Sizes in canvas pixels. What lies over the holder covers the side it is nearest to. */
function measure(holder: HTMLElement, covering: readonly Element[], ratio: number): Layout {
  const sheet = holder.getBoundingClientRect();
  const covered = { left: 0, top: 0, right: 0, bottom: 0 };
  for (const element of covering) {
    const box = element.getBoundingClientRect();
    if (box.width === 0 || box.left >= sheet.right || box.top >= sheet.bottom || box.bottom <= sheet.top) continue;
    const reach = {
      left: box.right - sheet.left,
      right: sheet.right - box.left,
      top: box.bottom - sheet.top,
      bottom: sheet.bottom - box.top,
    };
    const share = (side: keyof typeof reach) =>
      reach[side] / (side === 'left' || side === 'right' ? sheet.width : sheet.height);
    const sides = ['left', 'right', 'top', 'bottom'] as const;
    const side = sides.reduce((best, next) => (share(next) < share(best) ? next : best));
    covered[side] = Math.max(covered[side], reach[side] * ratio);
  }
  // as large as the rest of the page: its root font size is the sheet's unit of length
  const rem = Number.parseFloat(getComputedStyle(document.documentElement).fontSize);
  return {
    width: Math.max(1, Math.round(sheet.width * ratio)),
    height: Math.max(1, Math.round(sheet.height * ratio)),
    covered,
    unit: (rem / 16) * ratio,
  };
}
