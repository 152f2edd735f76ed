/** A picture that stays the same is drawn again after this time all the same [s]: for words that waited to move, letters that came late, and a canvas that was lost. */
const ANEW = 1;

/** Whether a picture has to be drawn again: most of the work of a page is its drawing, and a descent on hold or at rest stands still. */
export class Redraw {
  #last: string | undefined;
  #drawnAt = -Infinity;

  /** `picture`: all that it depends on, in words. `seconds`: grow steadily. Whoever is told that it is due draws. */
  isDue(picture: string, seconds: number): boolean {
    if (picture === this.#last && seconds - this.#drawnAt < ANEW) return false;
    this.#last = picture;
    this.#drawnAt = seconds;
    return true;
  }
}
