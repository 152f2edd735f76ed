import { DASHES, type Lettering, type Mark, type Pen, TONES, type Tone, WIDTHS } from './pen.ts';

/** A pen on a canvas. The colors and the typeface are read from the style sheet once. */
export class CanvasPen implements Pen {
  unit = 1;
  #context: CanvasRenderingContext2D;
  readonly #colors: ReadonlyMap<Tone, string>;
  readonly #typeface: string;
  #lifted = true;
  #lightness = 1;

  constructor(context: CanvasRenderingContext2D) {
    this.#context = context;
    const style = getComputedStyle(document.documentElement);
    this.#colors = new Map(TONES.map((tone) => [tone, style.getPropertyValue(`--${tone}`).trim()]));
    this.#typeface = style.getPropertyValue('--typeface').trim();
  }

  /** Draws on another canvas from now on; `unit` is its pixels in a drafting unit. */
  moveToSheet(context: CanvasRenderingContext2D, unit: number): void {
    this.#context = context;
    this.unit = unit;
    context.lineJoin = 'round';
    context.lineCap = 'round';
    this.#lifted = true;
  }

  moveTo(x: number, y: number): void {
    this.#lower();
    this.#context.moveTo(x, y);
  }

  lineTo(x: number, y: number): void {
    this.#lower();
    this.#context.lineTo(x, y);
  }

  curveTo(controlX: number, controlY: number, x: number, y: number): void {
    this.#lower();
    this.#context.quadraticCurveTo(controlX, controlY, x, y);
  }

  arc(centerX: number, centerY: number, radius: number, from: number, to: number, backward = false): void {
    this.#lower();
    this.#context.arc(centerX, centerY, Math.max(0, radius), from, to, backward);
  }

  close(): void {
    this.#context.closePath();
  }

  paint(mark: Mark): void {
    const context = this.#context;
    context.globalAlpha = mark.alpha ?? 1;
    if (mark.fill !== undefined) {
      context.fillStyle = this.#color(mark.fill);
      context.fill();
    }
    if (mark.stroke !== undefined) {
      context.strokeStyle = this.#color(mark.stroke);
      context.lineWidth = WIDTHS[mark.width ?? 'thin'] * this.unit * this.#lightness;
      const dash = mark.dash ?? 'solid';
      if (dash !== 'solid') context.setLineDash(DASHES[dash].map((length) => length * this.unit));
      context.stroke();
      if (dash !== 'solid') context.setLineDash([]);
    }
    context.globalAlpha = 1;
    this.#lifted = true;
  }

  lighter(share: number, draw: () => void): void {
    const before = this.#lightness;
    this.#lightness = before * share;
    draw();
    this.#lightness = before;
  }

  within(draw: () => void): void {
    this.#context.save();
    this.#context.clip();
    this.#lifted = true;
    draw();
    this.#context.restore();
    this.#lifted = true;
  }

  text(words: string, x: number, y: number, lettering: Lettering): void {
    const context = this.#context;
    context.save();
    this.#letter(lettering);
    context.translate(x, y);
    if (lettering.turn !== undefined) context.rotate(lettering.turn);
    if (lettering.halo !== undefined) {
      context.strokeStyle = this.#color(lettering.halo);
      context.lineWidth = 5 * this.unit;
      context.strokeText(words, 0, 0);
    }
    context.fillStyle = this.#color(lettering.tone ?? 'ink');
    context.fillText(words, 0, 0);
    context.restore();
  }

  widthOf(words: string, lettering: Lettering): number {
    this.#context.save();
    this.#letter(lettering);
    const { width } = this.#context.measureText(words);
    this.#context.restore();
    return width;
  }

  #color(tone: Tone): string {
    return this.#colors.get(tone) ?? '';
  }

  #lower(): void {
    if (!this.#lifted) return;
    this.#context.beginPath();
    this.#lifted = false;
  }

  #letter(lettering: Lettering): void {
    const slant = lettering.italic === true ? 'italic ' : '';
    const weight = lettering.bold === true ? 'bold ' : '';
    this.#context.font = `${slant}${weight}${lettering.size * this.unit}px ${this.#typeface}`;
    this.#context.textAlign = lettering.align ?? 'left';
    this.#context.textBaseline = 'alphabetic';
  }
}
