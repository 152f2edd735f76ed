import type { WorldTouchdown } from '../../engine/table/index.ts';
import { groundHeight } from '../../engine/ground/index.ts';
import {
  createDescent,
  readDescent,
  stepDescent,
  TICK_DT,
  type Descent,
  type DescentState,
} from '../../engine/world/index.ts';
import { frameSubject } from '../camera/follow.ts';
import { pixelRatio } from '../camera/pixelRatio.ts';
import { NO_INSETS, SectionCamera } from '../camera/sectionCamera.ts';
import { CanvasPen } from '../ink/canvasPen.ts';
import { wantsStill } from '../settings/store.ts';
import { drawFootprint } from '../views/footprint.ts';
import { drawGround } from '../views/ground.ts';
import { drawLander } from '../views/lander/drawLander.ts';
import type { Figure } from '../views/lander/figure.ts';
import { drawPaper } from '../views/paper.ts';
import { drawCenterOfMass, drawPlumbLine } from '../views/plumbLine.ts';
import type { Sheet } from '../views/sheet.ts';
import { drawSpeedVector } from '../views/speedVector.ts';
import { drawStrike, hullOnGround } from '../views/strikeMark.ts';
import { footSpots, onGround, poseOf } from './pose.ts';

/** The first moment stands still this long, so that three starts can be compared [s]. */
const PAUSE = 0.9;
/** Reaches of the lander that it may slide before the picture goes with it. */
const FREE_SLIDE = 1.1;
/** Reaches of the lander kept above its center of mass. */
const SMALL_HEADROOM = 1.05;

/** A small section that plays one touchdown again on one world, with the pens of the large one. */
export class WorldSection {
  readonly canvas = document.createElement('canvas');
  readonly #world: WorldTouchdown;
  readonly #figure: Figure;
  readonly #camera = new SectionCamera();
  #pen: CanvasPen | undefined;
  #descent: Descent;
  #state: DescentState;
  #owed = -PAUSE;
  #unit = 1;

  constructor(options: { readonly world: WorldTouchdown; readonly figure: Figure }) {
    this.#world = options.world;
    this.#figure = options.figure;
    this.#descent = createDescent(options.world.setup);
    this.#state = readDescent(this.#descent);
    // pages without movement show the end at once
    if (wantsStill()) this.#state = options.world.final;
  }

  restart(): void {
    this.#descent = createDescent(this.#world.setup);
    this.#state = readDescent(this.#descent);
    this.#owed = -PAUSE;
  }

  /** Moves on by these seconds and draws. */
  draw(seconds: number): void {
    const context = this.canvas.getContext('2d');
    if (context === null) return;
    this.#advance(seconds);
    const ratio = pixelRatio();
    const width = Math.round(this.canvas.clientWidth * ratio);
    const height = Math.round(this.canvas.clientHeight * ratio);
    if (width === 0 || height === 0) return;
    if (this.canvas.width !== width) this.canvas.width = width;
    if (this.canvas.height !== height) this.canvas.height = height;
    this.#pen ??= new CanvasPen(context);
    this.#unit = 0.85 * ratio;
    this.#pen.moveToSheet(context, this.#unit);
    this.#frame(width, height);
    this.#draw({ pen: this.#pen, camera: this.#camera, time: 0, still: true });
  }

  #advance(seconds: number): void {
    if (this.#descent.outcome !== undefined || this.#state === this.#world.final) return;
    this.#owed += seconds;
    while (this.#owed >= TICK_DT && this.#descent.outcome === undefined) {
      this.#owed -= TICK_DT;
      stepDescent(this.#descent, this.#world.input);
    }
    this.#state = readDescent(this.#descent);
  }

  #frame(width: number, height: number): void {
    const { terrain, start } = this.#world.setup;
    const figure = this.#figure;
    this.#camera.size = { width, height, covered: NO_INSETS };
    const reach = Math.max(figure.halfStance, figure.hull.top - figure.centerHeight);
    // the picture stays where it touched until the lander would slide out of it
    const slid = this.#state.x - start.x;
    const free = FREE_SLIDE * reach;
    const x = this.#state.x - Math.max(-free, Math.min(free, slid));
    const groundY = groundHeight(terrain, x);
    this.#camera.framing = frameSubject(
      { x, y: groundY + figure.centerHeight, reach, groundY },
      this.#camera,
      this.#unit,
      SMALL_HEADROOM,
    );
  }

  #draw(sheet: Sheet): void {
    const { terrain } = this.#world.setup;
    const { pen, camera } = sheet;
    const state = this.#state;
    drawPaper(sheet);
    drawGround(sheet, terrain);
    const pose = onGround(poseOf(state, this.#figure), terrain);
    const [left, right] = footSpots(pose);
    const groundAt = (x: number) => ({ x, y: groundHeight(terrain, x) });
    drawFootprint(sheet, groundAt(left.x), groundAt(right.x));
    drawLander(pen, camera, this.#figure, pose);
    const struck = hullOnGround(this.#figure, state, terrain);
    if (struck !== undefined) drawStrike(sheet, struck);
    drawPlumbLine(sheet, { ...state, groundY: groundHeight(terrain, state.x) });
    const { start } = this.#world.setup;
    if (this.#owed < 0 && state !== this.#world.final && this.#world.limit !== undefined) {
      const side = start.vx < 0 ? 'left' : 'right';
      drawSpeedVector(sheet, {
        x: state.x,
        y: state.y,
        speed: start.vx,
        leadsTo: start.vx,
        limit: this.#world.limit.tip,
        side,
        clear: 0,
        unitsPerSpeed: 40,
        limitWords: '',
        speedWords: '',
        speedShort: '',
        speedBare: '',
      });
    }
    drawCenterOfMass(pen, camera.sheetX(state.x), camera.sheetY(state.y), state.angle, 7 * pen.unit);
  }
}
