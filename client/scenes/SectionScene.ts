import { Scene } from 'phaser';
import { Follower } from '../camera/follow.ts';
import { SectionCamera } from '../camera/sectionCamera.ts';
import type { CanvasPen } from '../ink/canvasPen.ts';
import type { Sheet } from '../views/sheet.ts';
import { DescentDrawing, type DescentSource } from './descentDrawing.ts';
import { InkObject } from './inkObject.ts';
import { Redraw } from './redraw.ts';

/** What the page tells the scene about its place: the size of the canvas and what lies over it [px], px a unit. */
export interface Layout {
  readonly width: number;
  readonly height: number;
  readonly covered: { readonly left: number; readonly top: number; readonly right: number; readonly bottom: number };
  readonly unit: number;
}

/** The section on the table: one scene, drawn back to front by ink objects from the newest view of the table. */
export class SectionScene extends Scene {
  readonly #source: DescentSource;
  readonly #layout: () => Layout;
  readonly #camera = new SectionCamera();
  readonly #follower = new Follower(this.#camera);
  readonly #drawing: DescentDrawing;
  readonly #redraw = new Redraw();
  #unit = 1;
  #time = 0;

  constructor(source: DescentSource, layout: () => Layout) {
    super('section');
    this.#source = source;
    this.#layout = layout;
    this.#drawing = new DescentDrawing(source);
  }

  create(): void {
    for (const draw of this.#drawing.layers) {
      this.sys.displayList.add(new InkObject(this, { unit: () => this.#unit, draw: (pen) => draw(this.#sheet(pen)) }));
    }
  }

  override update(nowMs: number, deltaMs: number): void {
    const layout = this.#layout();
    this.#unit = layout.unit;
    const { width, height, covered } = layout;
    const before = this.#camera.size;
    if (width !== before.width || height !== before.height) this.#follower.cut();
    this.#camera.size = { width, height, covered };
    const seconds = deltaMs / 1000;
    this.#time += seconds;
    const subject = this.#drawing.advance(nowMs, seconds);
    if (subject === undefined) return;
    if (this.#drawing.isNewDescent) this.#follower.cut();
    this.#follower.step(subject, seconds, this.#unit);
    // what is not drawn anew stays on the canvas as it is
    this.sys.setVisible(this.#redraw.isDue(this.#picture(), this.#time));
  }

  #picture(): string {
    const { size, framing } = this.#camera;
    // a spring comes to rest by ever smaller steps: those that nobody sees are none
    const seen = [framing.x * framing.scale, framing.y * framing.scale, 2000 * Math.log(framing.scale)];
    return JSON.stringify([this.#unit, size, seen.map((px) => Math.round(10 * px)), this.#drawing.picture]);
  }

  #sheet(pen: CanvasPen): Sheet {
    return { pen, camera: this.#camera, time: this.#time, still: this.#source.still() };
  }
}
