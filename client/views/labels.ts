import type { Lettering, Pen } from '../ink/pen.ts';
import type { Spot } from '../ink/stencil.ts';
import type { Sheet } from './sheet.ts';

/** Words on the drawing, and where they may stand. */
interface Label {
  /** The same from frame to frame: a label stays where it is for as long as it can. */
  readonly name: string;
  /** Lower ranks choose their places first. */
  readonly rank: number;
  readonly words: string;
  readonly lettering: Lettering;
  /** The best first [px]: where the words begin, their middle or their end, as they are aligned. */
  readonly places: readonly Spot[];
  /** Left out where there is no room; otherwise it stands at its first place even so. */
  readonly mayGo?: boolean;
  /** Stands just there or nowhere: it is not moved into the free part of the sheet. */
  readonly isFixed?: boolean;
  /** More of it to the left of the words and below them [px], such as the bar of a scale. */
  readonly more?: { readonly before: number; readonly below: number };
  /** Drawn along with the words. */
  readonly along?: (at: Spot) => void;
}

/** The sides of a part of the sheet [px]. */
export interface Bounds {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

/** Of the size of letters, over and under their line [-]. */
const ASCENT = 0.78;
const DESCENT = 0.26;
/** Kept free around words, and at the edges of the sheet [drafting units]. */
const AROUND = 3;
const EDGE = 7;
/** A label that gave way comes back, or moves to a better place, only after this time [s]: nothing flickers. */
const STAYS = 1;
const GONE = -1;

/**
 * Places the words on a drawing so that none lies over others, or over what is blocked, while there is room. They are collected through a frame and lettered at its
 * end, the more important first.
 */
export class LabelBoard {
  #labels: Label[] = [];
  #blocked: Bounds[] = [];
  readonly #stands = new Map<string, { readonly place: number; readonly since: number }>();

  begin(): void {
    this.#labels = [];
    this.#blocked = [];
  }

  put(label: Label): void {
    if (label.words !== '') this.#labels.push(label);
  }

  /** Words keep clear of this while they can [px]. */
  block(box: Bounds): void {
    this.#blocked.push(box);
  }

  letter(sheet: Sheet): void {
    const taken = [...this.#blocked];
    for (const label of this.#labels.toSorted((a, b) => a.rank - b.rank)) {
      const places = label.places.map((place) => placed(sheet, label, place));
      const chosen = this.#choose(label, places, taken, sheet);
      const at = places[chosen];
      if (at === undefined) continue;
      taken.push(at.box);
      draw(sheet.pen, label, at.spot);
    }
  }

  #choose(label: Label, places: readonly Placed[], taken: readonly Bounds[], { time, pen }: Sheet): number {
    const before = this.#stands.get(label.name);
    const isFree = (place: number, around: number) => {
      const at = places[place];
      return at !== undefined && at.isInside && taken.every((box) => !meet(at.box, box, around * pen.unit));
    };
    const stays = before !== undefined && (before.place === GONE || isFree(before.place, AROUND));
    const mayChange = before === undefined || time - before.since > STAYS || time < before.since;
    if (stays && !mayChange) return before.place;
    // a better place must have room to spare, else it would be lost again at once
    const free = places.findIndex((_, place) => isFree(place, before === undefined || !stays ? AROUND : 2 * AROUND));
    const best = free === -1 && stays ? before.place : free;
    const place = best === GONE && label.mayGo !== true ? 0 : best;
    if (before?.place !== place) this.#stands.set(label.name, { place, since: time });
    return place;
  }
}

/** Words on a drawing: placed with all others where there is a board for that; otherwise there is room, and they stand at their first place. */
export function letter(sheet: Sheet, label: Label): void {
  const [first] = label.places;
  if (sheet.labels !== undefined) sheet.labels.put(label);
  else if (first !== undefined && label.words !== '') draw(sheet.pen, label, placed(sheet, label, first).spot);
}

interface Placed {
  readonly spot: Spot;
  readonly box: Bounds;
  readonly isInside: boolean;
}

/** A label at a place, moved into the free part of the sheet. */
function placed({ pen, camera }: Sheet, label: Label, { x, y }: Spot): Placed {
  const { lettering, words, more } = label;
  const before = more?.before ?? 0;
  const width = pen.widthOf(words, lettering);
  const ahead = { left: 0, center: width / 2, right: width }[lettering.align ?? 'left'];
  const size = lettering.size * pen.unit;
  const below = DESCENT * size + (more?.below ?? 0);
  const { width: sheetWidth, height, covered } = camera.size;
  const edge = EDGE * pen.unit;
  const free = {
    left: covered.left + edge + ahead + before,
    right: sheetWidth - covered.right - edge - (width - ahead),
    top: covered.top + edge + ASCENT * size,
    bottom: height - covered.bottom - edge - below,
  };
  const spot =
    label.isFixed === true
      ? { x, y }
      : { x: Math.max(free.left, Math.min(free.right, x)), y: Math.max(free.top, Math.min(free.bottom, y)) };
  const left = spot.x - ahead;
  const isInside = spot.x >= free.left && spot.x <= free.right && spot.y >= free.top && spot.y <= free.bottom;
  const box = { left: left - before, right: left + width, top: spot.y - ASCENT * size, bottom: spot.y + below };
  return { spot, box, isInside };
}

function draw(pen: Pen, { words, lettering, along }: Label, at: Spot): void {
  along?.(at);
  pen.text(words, at.x, at.y, lettering);
}

function meet(a: Bounds, b: Bounds, around: number): boolean {
  return (
    a.left < b.right + around && b.left < a.right + around && a.top < b.bottom + around && b.top < a.bottom + around
  );
}
