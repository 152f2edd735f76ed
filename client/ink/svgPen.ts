import { DASHES, type Lettering, type Mark, type Pen, WIDTHS } from './pen.ts';

/** Average width of a letter as a share of its size. Only used to leave room, never to align. */
const LETTER_WIDTH = 0.5;

/**
 * A pen that writes SVG elements. Colors are CSS variables, so the document that shows the drawing decides on them; the
 * drawing prints sharply at any size, and needs no script where it is written at build time.
 */
export class SvgPen implements Pen {
  readonly unit: number;
  readonly #elements: string[] = [];
  readonly #idPrefix: string;
  #path = '';
  #clips = 0;
  #lightness = 1;

  /** `idPrefix` keeps the names inside one drawing apart from those of another in the same document. */
  constructor(unit: number, idPrefix: string) {
    this.unit = unit;
    this.#idPrefix = idPrefix;
  }

  /** What has been drawn so far, to be put inside an `svg` element. */
  get markup(): string {
    return this.#elements.join('');
  }

  moveTo(x: number, y: number): void {
    this.#path += `M${short(x)} ${short(y)}`;
  }

  lineTo(x: number, y: number): void {
    this.#path += `${this.#path === '' ? 'M' : 'L'}${short(x)} ${short(y)}`;
  }

  curveTo(controlX: number, controlY: number, x: number, y: number): void {
    this.#path += `Q${short(controlX)} ${short(controlY)} ${short(x)} ${short(y)}`;
  }

  arc(centerX: number, centerY: number, radius: number, from: number, to: number, backward = false): void {
    const sweep = arcSweep(from, to, backward);
    this.lineTo(centerX + radius * Math.cos(from), centerY + radius * Math.sin(from));
    // an SVG arc cannot close on its own start, so every arc is drawn in two halves
    for (const angle of [from + sweep / 2, from + sweep]) {
      const x = short(centerX + radius * Math.cos(angle));
      const y = short(centerY + radius * Math.sin(angle));
      this.#path += `A${short(radius)} ${short(radius)} 0 0 ${sweep > 0 ? 1 : 0} ${x} ${y}`;
    }
  }

  close(): void {
    this.#path += 'Z';
  }

  paint(mark: Mark): void {
    let style = mark.fill === undefined ? 'fill="none"' : `fill="var(--${mark.fill})"`;
    if (mark.stroke !== undefined) {
      style += ` stroke="var(--${mark.stroke})" stroke-width="${short(WIDTHS[mark.width ?? 'thin'] * this.unit * this.#lightness)}"`;
      style += ' stroke-linecap="round" stroke-linejoin="round"';
      const dash = mark.dash ?? 'solid';
      if (dash !== 'solid') style += ` stroke-dasharray="${DASHES[dash].map((d) => short(d * this.unit)).join(' ')}"`;
    }
    if (mark.alpha !== undefined && mark.alpha < 1) style += ` opacity="${short(mark.alpha)}"`;
    if (this.#path !== '') this.#elements.push(`<path d="${this.#path}" ${style}/>`);
    this.#path = '';
  }

  lighter(share: number, draw: () => void): void {
    const before = this.#lightness;
    this.#lightness = before * share;
    draw();
    this.#lightness = before;
  }

  within(draw: () => void): void {
    const id = `${this.#idPrefix}-clip${this.#clips++}`;
    this.#elements.push(`<clipPath id="${id}"><path d="${this.#path}"/></clipPath><g clip-path="url(#${id})">`);
    this.#path = '';
    draw();
    this.#elements.push('</g>');
  }

  /** Puts what `draw` draws into a group of this class, for the style sheet to move. */
  group(className: string, draw: () => void): void {
    this.#elements.push(`<g class="${className}">`);
    draw();
    this.#elements.push('</g>');
  }

  text(words: string, x: number, y: number, lettering: Lettering): void {
    const anchor = { left: 'start', center: 'middle', right: 'end' }[lettering.align ?? 'left'];
    let style = `font-size="${short(lettering.size * this.unit)}" text-anchor="${anchor}" fill="var(--${lettering.tone ?? 'ink'})"`;
    if (lettering.italic === true) style += ' font-style="italic"';
    if (lettering.bold === true) style += ' font-weight="bold"';
    if (lettering.halo !== undefined) {
      style += ` stroke="var(--${lettering.halo})" stroke-width="${short(5 * this.unit)}" paint-order="stroke"`;
    }
    if (lettering.turn !== undefined) {
      style += ` transform="rotate(${short((lettering.turn * 180) / Math.PI)} ${short(x)} ${short(y)})"`;
    }
    this.#elements.push(`<text x="${short(x)}" y="${short(y)}" ${style}>${escape(words)}</text>`);
  }

  widthOf(words: string, lettering: Lettering): number {
    const share = lettering.bold === true ? 1.16 * LETTER_WIDTH : LETTER_WIDTH;
    return words.length * share * lettering.size * this.unit;
  }
}

function arcSweep(from: number, to: number, backward: boolean): number {
  const turn = 2 * Math.PI;
  const sweep = to - from;
  if (Math.abs(sweep) >= turn) return backward ? -turn : turn;
  if (backward) return sweep > 0 ? sweep - turn : sweep;
  return sweep < 0 ? sweep + turn : sweep;
}

function short(value: number): string {
  return String(Math.round(value * 100) / 100);
}

function escape(words: string): string {
  return words.replaceAll('&', '&amp;').replaceAll('<', '&lt;').replaceAll('>', '&gt;');
}
