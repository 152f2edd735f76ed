import { CANVAS, Game } from 'phaser';
import { pixelRatio } from '../camera/pixelRatio.ts';
import type { DescentSource } from './descentDrawing.ts';
import { type Layout, SectionScene } from './SectionScene.ts';

interface SectionGame {
  /** What lies over the section has changed. */
  refit(): void;
  end(): void;
}

/** Puts the section into its holder and keeps it as large as the holder. */
export function createSectionGame(
  holder: HTMLElement,
  source: DescentSource,
  covering: () => readonly Element[],
): SectionGame {
  let layout = measure(holder, covering(), pixelRatio());
  const game = new Game({
    type: CANVAS,
    parent: holder,
    width: layout.width,
    height: layout.height,
    zoom: 1 / pixelRatio(),
    banner: false,
    audio: { noAudio: true },
    // the paper is drawn over all of it, and a picture that has not changed is left as it is
    transparent: true,
    render: { clearBeforeRender: false },
    autoFocus: false,
    // everything that is pressed is HTML
    input: { keyboard: false, mouse: false, touch: false, gamepad: false },
    scene: new SectionScene(source, () => layout),
  });
  // a canvas that is given a size, even its own, is blank until it is drawn on: so only a new one, and just before a frame
  let isStale = true;
  const refit = () => {
    if (!isStale) return;
    isStale = false;
    layout = measure(holder, covering(), pixelRatio());
    if (game.scale.zoom !== 1 / pixelRatio()) game.scale.setZoom(1 / pixelRatio());
    const { width, height } = game.scale.gameSize;
    if (width !== layout.width || height !== layout.height) game.scale.resize(layout.width, layout.height);
  };
  // what it shows is told in words elsewhere
  game.events.once('ready', () => game.canvas.setAttribute('aria-hidden', 'true'));
  game.events.on('prestep', refit);
  const observer = new ResizeObserver(() => (isStale = true));
  for (const element of [holder, ...covering()]) observer.observe(element);
  return {
    refit: () => (isStale = true),
    end() {
      observer.disconnect();
      game.destroy(true);
    },
  };
}

/** What spans at least this share of a side covers that side; smaller things are drawn around [-]. */
const SPANS = 0.6;
const WHOLE = 0.8;

/** Sizes in canvas pixels. What lies along a side of the holder covers it as far as it reaches in. */
function measure(holder: HTMLElement, covering: readonly Element[], ratio: number): Layout {
  const sheet = holder.getBoundingClientRect();
  const boxes = covering.map((element) => element.getBoundingClientRect());
  const free = { left: sheet.left, top: sheet.top, right: sheet.right, bottom: sheet.bottom };
  // the sides first: what spans the part between them covers its top or bottom
  for (const box of boxes) {
    const tall = Math.min(box.bottom, sheet.bottom) - Math.max(box.top, sheet.top);
    if (tall < SPANS * sheet.height || box.right <= sheet.left || box.left >= sheet.right) continue;
    // a sheet across the whole width covers the part that it leaves least of
    if (box.width > WHOLE * sheet.width) continue;
    if (box.left - sheet.left < sheet.right - box.right) free.left = Math.max(free.left, box.right);
    else free.right = Math.min(free.right, box.left);
  }
  for (const box of boxes) {
    const wide = Math.min(box.right, free.right) - Math.max(box.left, free.left);
    if (wide < SPANS * (free.right - free.left) || box.bottom <= sheet.top || box.top >= sheet.bottom) continue;
    if (box.top - sheet.top < sheet.bottom - box.bottom) free.top = Math.max(free.top, box.bottom);
    else free.bottom = Math.min(free.bottom, box.top);
  }
  const covered = {
    left: ratio * (free.left - sheet.left),
    top: ratio * (free.top - sheet.top),
    right: ratio * (sheet.right - free.right),
    bottom: ratio * (sheet.bottom - free.bottom),
  };
  // as large as the rest of the page: its root font size is the sheet's unit of length
  const rem = Number.parseFloat(getComputedStyle(document.documentElement).fontSize);
  // for people who stand far off, a page may ask for more
  const larger = Number(getComputedStyle(holder).getPropertyValue('--drawn-larger') || 1);
  return {
    width: Math.max(1, Math.round(holder.clientWidth * ratio)),
    height: Math.max(1, Math.round(holder.clientHeight * ratio)),
    covered,
    unit: (rem / 16) * ratio * larger,
  };
}
