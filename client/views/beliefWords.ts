import type { Lettering } from '../ink/pen.ts';
import type { Sheet } from './sheet.ts';

const LETTERING: Lettering = { size: 14, italic: true, halo: 'paper' };

/** A few words on what is believed or true, kept inside the free part of the sheet. `x`, `y` [px] of their middle, or of their end toward the lander. */
export function drawBeliefWords(
  { pen, camera }: Sheet,
  note: { readonly words: string; readonly x: number; readonly y: number; readonly align: 'left' | 'center' | 'right' },
): void {
  const width = pen.widthOf(note.words, LETTERING);
  const before = { left: 0, center: width / 2, right: width }[note.align];
  const { covered } = camera.size;
  const margin = 8 * pen.unit;
  const least = covered.left + margin;
  const most = camera.size.width - covered.right - width - margin;
  const lowest = camera.size.height - covered.bottom - margin;
  const highest = covered.top + 18 * pen.unit;
  pen.text(
    note.words,
    Math.max(least, Math.min(most, note.x - before)),
    Math.max(highest, Math.min(lowest, note.y)),
    LETTERING,
  );
}
