import type { Lettering, Mark, Pen, Tone, Width } from './pen.ts';

/** One step thinner than in ink. */
const THINNER: Readonly<Record<Width, Width>> = {
  heavy: 'thick',
  thick: 'outline',
  outline: 'edge',
  edge: 'thin',
  thin: 'hair',
  hair: 'hair',
};

/** Inks become pencil, and card that was laid on becomes plain paper. */
const PENCILED: Readonly<Partial<Record<Tone, Tone>>> = {
  ink: 'pencil',
  blue: 'pencil',
  card: 'paper',
  shade: 'paper',
  glass: 'paper',
  wash: 'paper',
};

/**
 * The same drawing in pencil, which is how anything is drawn that is believed and not known: thinner lines, dashed where they would be full. Words
 * stay as they are, for they must be read. `bare`: outlines alone, so that what lies below shows through.
 */
export class PencilPen implements Pen {
  readonly #pen: Pen;
  readonly #bare: boolean;

  constructor(pen: Pen, options: { readonly bare: boolean } = { bare: false }) {
    this.#pen = pen;
    this.#bare = options.bare;
  }

  get unit(): number {
    return this.#pen.unit;
  }

  moveTo(x: number, y: number): void {
    this.#pen.moveTo(x, y);
  }

  lineTo(x: number, y: number): void {
    this.#pen.lineTo(x, y);
  }

  curveTo(controlX: number, controlY: number, x: number, y: number): void {
    this.#pen.curveTo(controlX, controlY, x, y);
  }

  arc(centerX: number, centerY: number, radius: number, from: number, to: number, backwards = false): void {
    this.#pen.arc(centerX, centerY, radius, from, to, backwards);
  }

  close(): void {
    this.#pen.close();
  }

  paint(mark: Mark): void {
    this.#pen.paint(inPencil(mark, this.#bare));
  }

  lighter(share: number, draw: () => void): void {
    this.#pen.lighter(share, draw);
  }

  within(draw: () => void): void {
    this.#pen.within(draw);
  }

  text(words: string, x: number, y: number, lettering: Lettering): void {
    this.#pen.text(words, x, y, lettering);
  }

  widthOf(words: string, lettering: Lettering): number {
    return this.#pen.widthOf(words, lettering);
  }
}

function inPencil(mark: Mark, bare: boolean): Mark {
  const { fill, stroke, width = 'thin', dash = 'solid', alpha } = mark;
  const tone = stroke === undefined ? undefined : (PENCILED[stroke] ?? stroke);
  // the light edges under a line only keep it clear of what is below; details would be a thicket of dashes
  const isDashed = tone === 'pencil' && dash === 'solid' && width !== 'thin' && width !== 'hair';
  return {
    ...(fill !== undefined && !bare && { fill: PENCILED[fill] ?? fill }),
    ...(tone !== undefined && !(bare && tone === 'paper') && { stroke: tone }),
    width: THINNER[width],
    dash: isDashed ? 'fine' : dash,
    ...(alpha !== undefined && { alpha }),
  };
}
