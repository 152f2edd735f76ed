import { GameObjects, type Scene } from 'phaser';
import { CanvasPen } from '../ink/canvasPen.ts';

/**
 * A game object that is a drawing: Phaser's canvas renderer hands it the canvas once a frame, in display-list order, and
 * the drawing does the rest with a pen. Graphics objects have no dashes, clips or joins, which a drafting table lives on.
 */
export class InkObject extends GameObjects.GameObject {
  readonly #draw: (pen: CanvasPen) => void;
  readonly #unit: () => number;
  #pen: CanvasPen | undefined;

  constructor(scene: Scene, options: { readonly unit: () => number; readonly draw: (pen: CanvasPen) => void }) {
    super(scene, 'Ink');
    this.#unit = options.unit;
    this.#draw = options.draw;
  }

  /** Called by Phaser's canvas renderer. */
  renderCanvas(renderer: { readonly currentContext: CanvasRenderingContext2D }): void {
    const context = renderer.currentContext;
    this.#pen ??= new CanvasPen(context);
    context.save();
    context.setTransform(1, 0, 0, 1, 0, 0);
    this.#pen.moveToSheet(context, this.#unit());
    this.#draw(this.#pen);
    context.restore();
  }
}
