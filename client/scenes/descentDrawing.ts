import type { TableView } from '../../engine/table/index.ts';
import { groundHeight, type Profile, type Terrain } from '../../engine/ground/index.ts';
import { TICK_RATE, type DescentState } from '../../engine/world/index.ts';
import type { Subject } from '../camera/follow.ts';
import { enlargementAt } from '../camera/enlargement.ts';
import type { SectionCamera } from '../camera/sectionCamera.ts';
import type { Spot } from '../ink/stencil.ts';
import { createSmoothing, type Smoothing } from '../net/index.ts';
import type { UnitSystem } from '../settings/settings.ts';
import { settings } from '../settings/store.ts';
import { distance, trailTime, unitOf } from '../text/numbers.ts';
import { drawAttitude } from '../views/attitude.ts';
import { drawHeight, drawScaleBar, drawSlope, drawTimes } from '../views/dimensions.ts';
import { drawDust } from '../views/dust.ts';
import { drawFootprint } from '../views/footprint.ts';
import { drawGround } from '../views/ground.ts';
import { drawHorizon } from '../views/horizon.ts';
import { drawGhosts } from '../views/ghosts.ts';
import { drawHeightLadder } from '../views/heightLadder.ts';
import { type Bounds, LabelBoard } from '../views/labels.ts';
import { drawLander } from '../views/lander/drawLander.ts';
import { landerExtent } from '../views/lander/extent.ts';
import type { Figure } from '../views/lander/figure.ts';
import { drawPaper } from '../views/paper.ts';
import { drawCenterOfMass, drawPlumbLine } from '../views/plumbLine.ts';
import { drawPlume } from '../views/plume.ts';
import { drawPrints } from '../views/prints.ts';
import { drawProtractor } from '../views/protractor.ts';
import { ramp, type Sheet } from '../views/sheet.ts';
import { drawShadow } from '../views/shadow.ts';
import { drawSpeedVector } from '../views/speedVector.ts';
import { drawSpotMark } from '../views/spotMark.ts';
import { drawStrike, hullOnGround } from '../views/strikeMark.ts';
import { drawTrail } from '../views/trail.ts';
import {
  beliefOf,
  type BeliefUnderTruth,
  drawBeliefUnderTruth,
  drawDoubt,
  drawMapUnderTruth,
  type LastBelief,
  nameTruth,
  pencilSheet,
} from './belief.ts';
import { type Figures, figuresOf, NO_FIGURES, sideToFall } from './figures.ts';
import { midTurn } from './midTurn.ts';
import { onGround, poseOf, shownCenterHeight } from './pose.ts';
import { Traces } from './traces.ts';

/** So many reaches and heights above the lander what was believed still has to be in the picture; an arrow points at what is higher [-]. */
const NEAR_BY = 0.6;
/** Cosine of the lean beyond which there is no more to fall: no tip arc is drawn. */
const FALLEN = 0.3;

/** Where the drawing gets its descent from. */
export interface DescentSource {
  readonly view: () => TableView | undefined;
  /** A moment of a clip, which is drawn instead while there is one. */
  readonly replayed?: () => ReplayedMoment | undefined;
  /** The view whose figures the page shows now: those on the drawing are the same, and change when they do. */
  readonly figures: () => TableView | undefined;
  /** What the crew believes, drawn in pencil beside what is true: for whoever is shown both while a descent runs. */
  readonly belief?: () => LastBelief | undefined;
  /** The true ground; of no meaning while the view is in pencil, when it is not known here. */
  readonly terrain: () => Terrain;
  readonly figure: Figure;
  /** Surface gravity [m/s²]. */
  readonly gravity: number;
  /** Of the engine [N]. */
  readonly maxThrust: number;
  /** Propellant at the start [kg]. */
  readonly fullPropellant: number;
  readonly still: () => boolean;
}

/** A moment that has passed: in ink what was so, in pencil under it what was believed. It is drawn as it is, without smoothing. */
interface ReplayedMoment {
  readonly view: TableView;
  readonly figures: TableView;
  readonly belief: LastBelief | undefined;
}

/** A mark on the path flown every so many seconds. */
const TRAIL_MARKS = 5;
/** Longer than from one reading to the next [s]. */
const LATEST = 0.1;
/** The hollow arrowhead stands where the commands lead in this time [s]. */
const LOOK_AHEAD = 2;
/** The arrow changes sides only for a drift that is more than a wobble [m/s]. */
const TURNED = 0.15;
/** Length of 1 m/s on the Moon [drafting units]; on other worlds the same share of what gravity allows is as long. */
const UNITS_PER_SPEED = 90;
const REFERENCE_GRAVITY = 1.62;

type Layer = (sheet: Sheet, state: DescentState, view: TableView) => void;

/** The whole picture of a descent, layer by layer, back to front. */
export class DescentDrawing {
  readonly layers: readonly ((sheet: Sheet) => void)[];
  readonly #source: DescentSource;
  readonly #labels = new LabelBoard();
  readonly #smoothing: Smoothing = createSmoothing();
  readonly #beliefSmoothing: Smoothing = createSmoothing();
  #figure: Figure;
  #state: DescentState | undefined;
  #view: TableView | undefined;
  #replayed: ReplayedMoment | undefined;
  readonly #traces = new Traces();
  /** Those of a clip, which are its own. */
  readonly #clipTraces = new Traces();
  /** Moment in the descent that is drawn, as smooth as its motion [s]. */
  #now = 0;
  #side: 'left' | 'right' = 'right';
  #figures: Figures = NO_FIGURES;
  #figured: TableView | undefined;
  #figuredSide: 'left' | 'right' = 'right';
  #figuredUnits: UnitSystem = 'si';
  /** As drawn [m/s]; undefined while there is none to draw. */
  #limit: number | undefined;
  /** How many times as large as the section the lander is drawn. */
  #times = 1;
  #isNewDescent = true;
  /** The ground as it is drawn: the true one, or that of the map. */
  #ground: Profile;
  /** Kept for when truth comes to lie over it; then as it is drawn. */
  #belief: LastBelief | undefined;
  /** That of the descent itself, while a clip has its own. */
  #lastBelief: LastBelief | undefined;
  #underTruth: BeliefUnderTruth | undefined;
  /** Right and up of the true one, as the words have it [m]: they change with the figures. */
  #apart: { readonly right: number; readonly up: number } | undefined;

  constructor(source: DescentSource) {
    this.#source = source;
    this.#figure = source.figure;
    this.#ground = source.terrain();
    const layer = (draw: Layer) => (sheet: Sheet) => {
      const view = this.#view;
      if (this.#state === undefined || view === undefined) return;
      const labeled = { ...sheet, labels: this.#labels };
      draw(view.drawnIn === 'pencil' ? pencilSheet(labeled) : labeled, this.#state, view);
    };
    this.layers = [
      () => this.#labels.begin(),
      (sheet) => drawPaper(sheet),
      layer((sheet) => drawHorizon(sheet, this.#ground)),
      layer((sheet, state) => this.#drawLadder(sheet, state)),
      layer((sheet, state) => this.#drawPath(sheet, state)),
      layer((sheet) => drawGround(sheet, this.#ground)),
      layer((sheet, state, view) => this.#drawBelief(sheet, state, view)),
      layer((sheet, _, view) => this.#drawSpot(sheet, view)),
      layer((sheet) => drawGhosts(sheet, this.#figure, this.#left.ghosts)),
      layer((sheet, state) => this.#drawLander(sheet, state)),
      layer((sheet, state) => this.#drawStability(sheet, state)),
      layer((sheet, state, view) => this.#drawMotion(sheet, state, view)),
      layer((sheet, state) => this.#drawMeasures(sheet, state)),
      (sheet) => this.#labels.letter(sheet),
    ];
  }

  /** True for the first frame of a descent: the picture cuts to it. */
  get isNewDescent(): boolean {
    return this.#isNewDescent;
  }

  /** All that the picture depends on beside its camera and the source's own fixed parts, in words: two that are the same need not both be drawn. */
  get picture(): string {
    if (this.#view === undefined) return '';
    const { commanded, site, stage, drawnIn, spread, map } = this.#view;
    return JSON.stringify([
      this.#state,
      [commanded, site, stage, drawnIn, spread, map?.sigma],
      [this.#underTruth?.state, this.#underTruth?.isLive, this.#apart],
      [this.#limit, this.#side, this.#figures, this.#now, this.#source.still()],
    ]);
  }

  /** Moves on to this moment and says what has to be in the picture. */
  advance(nowMs: number, seconds: number): Subject | undefined {
    const live = this.#source.view();
    if (live === undefined) return undefined;
    const replayed = this.#source.replayed?.();
    const view = replayed?.view ?? live;
    this.#smoothing.take(live.flight, nowMs, live.pace);
    const state = replayed?.view.flight ?? this.#smoothing.at(nowMs);
    if (state === undefined) return undefined;
    const isCut = (replayed === undefined) !== (this.#replayed === undefined);
    this.#isNewDescent = isCut || this.#state === undefined || state.tick < this.#state.tick;
    if (this.#isNewDescent && !isCut && replayed === undefined) this.#lastBelief = undefined;
    this.#replayed = replayed;
    this.#view = view;
    this.#ground = view.map ?? this.#source.terrain();
    const beside = replayed === undefined ? this.#beliefAt(nowMs, view.pace) : replayed.belief;
    this.#remember(state, view, beside);
    const newest = state.tick / TICK_RATE;
    this.#now = Math.min(newest, Math.max(newest - LATEST, this.#now + seconds * view.pace));
    this.#follow(state, view, seconds);
    this.#state = midTurn(state);
    this.#times = enlargementAt(state.height);
    this.#layUnder(this.#state, view, beside !== undefined);
    return this.#subject(this.#state);
  }

  /** The lander as large as it is drawn, with room for where it was believed to be, as far as that is near. */
  #subject(state: DescentState): Subject {
    const figure = this.#figure;
    const [x, y] = [state.x, this.#feetY(state) + this.#times * (state.y - this.#feetY(state))];
    const up = figure.hull.top - figure.centerHeight;
    const reach = this.#times * Math.max(figure.halfStance, up, figure.centerHeight);
    const beside = this.#underTruth?.state ?? state;
    const aside = Math.max(-reach, Math.min(reach, (beside.x - x) / 2));
    const above = Math.min(beside.y, state.y + NEAR_BY * (reach + state.height));
    return {
      x: x + aside,
      y: Math.max(y, above),
      reach: reach + Math.abs(aside),
      groundY: groundHeight(this.#ground, x),
    };
  }

  /** Height of the lowest foot [m]. */
  #feetY({ y, legs }: DescentState): number {
    return legs.length === 0 ? y - this.#figure.centerHeight : Math.min(...legs.map((leg) => leg.footY));
  }

  /** The sheet as the lander is drawn on it: larger, with its feet where they are. */
  #nearer(sheet: Sheet, state: DescentState): Sheet {
    return { ...sheet, camera: sheet.camera.enlarged(this.#times, state.x, this.#feetY(state)) };
  }

  /** What is believed while a descent runs, for whoever sees the truth: as smooth as that. */
  #beliefAt(nowMs: number, pace: number): LastBelief | undefined {
    const belief = this.#source.belief?.();
    if (belief === undefined) return undefined;
    this.#beliefSmoothing.take(belief.state, nowMs, pace);
    return { ...belief, state: this.#beliefSmoothing.at(nowMs) ?? belief.state };
  }

  /** What was believed comes to lie under the truth. */
  #layUnder(state: DescentState, view: TableView, isLive: boolean): void {
    const belief = view.drawnIn === 'ink' ? this.#belief : undefined;
    this.#underTruth = belief && {
      ...belief,
      ...((isLive ? this.#apart : undefined) ?? apartOf(belief.state, state)),
      isLive,
    };
  }

  #remember(state: DescentState, view: TableView, beside: LastBelief | undefined): void {
    if (this.#isNewDescent) this.#left.forget();
    if (this.#replayed === undefined) {
      this.#lastBelief = beside ?? beliefOf(view) ?? this.#lastBelief;
      this.#belief = this.#lastBelief;
    } else this.#belief = beside;
    if (view.drawnIn === 'ink' && this.#belief !== undefined && beside === undefined) this.#left.stand(state);
    else this.#left.take(state, this.#figure, this.#source.maxThrust);
  }

  /** What the descent that is drawn has left on the sheet. */
  get #left(): Traces {
    return this.#replayed === undefined ? this.#traces : this.#clipTraces;
  }

  /** What is shown but must not jump: the side of the arrow, the limit, the figures, the center of mass in the body. */
  #follow(state: DescentState, view: TableView, seconds: number): void {
    const limit = view.margin.predicted?.limit;
    if (limit === undefined || this.#limit === undefined || this.#isNewDescent) this.#limit = limit;
    else this.#limit += (limit - this.#limit) * Math.min(1, 6 * seconds);
    if (state.outcome !== undefined) this.#side = sideToFall(state);
    else if (state.vx > TURNED) this.#side = 'right';
    else if (state.vx < -TURNED) this.#side = 'left';
    this.#figure = { ...this.#figure, centerHeight: shownCenterHeight(state) ?? this.#figure.centerHeight };
    const read = this.#replayed?.figures ?? this.#source.figures();
    const { units } = settings();
    const isSame = read === this.#figured && this.#side === this.#figuredSide && units === this.#figuredUnits;
    if (read === undefined || isSame) return;
    this.#figured = read;
    this.#figuredSide = this.#side;
    this.#figuredUnits = units;
    this.#figures = figuresOf(read, this.#side);
    this.#apart = this.#belief && apartOf(this.#belief.state, state);
  }

  /** Where a lander's sheet has the ground that is seen straight below a place on it [m]. */
  #groundOn(sheet: Sheet, nearer: Sheet, x: number): number {
    const below = sheet.camera.sectionX(nearer.camera.sheetX(x));
    return nearer.camera.sectionY(sheet.camera.sheetY(this.#groundAt(below).y));
  }

  #groundAt(x: number): { x: number; y: number } {
    return { x, y: groundHeight(this.#ground, x) };
  }

  #drawBelief(sheet: Sheet, state: DescentState, view: TableView): void {
    const { map, spread } = view;
    const side = this.#side;
    if (map !== undefined && spread !== undefined)
      drawDoubt(sheet, this.#figure, { ...state, times: this.#times }, { map, spread, side });
    const under = this.#underTruth;
    if (under === undefined) return;
    const believed = this.#nearer(sheet, under.state);
    // in flight there is lettering beside the landers, which is to lie on neither
    if (this.#replayed !== undefined) {
      const pose = poseOf(under.state, this.#figure);
      this.#labels.block(onSheet(believed.camera, landerExtent(this.#figure, pose)));
    }
    drawMapUnderTruth(sheet, under.map, side);
    drawBeliefUnderTruth(believed, this.#figure, under);
    nameTruth(this.#nearer(sheet, state), this.#figure, { truth: state, isToLeft: state.x < under.state.x });
  }

  #drawLadder(sheet: Sheet, state: DescentState): void {
    if (state.touchdown !== undefined) return;
    drawHeightLadder(sheet, {
      groundY: this.#feetY(state) - state.height,
      height: state.height,
      x: state.x,
      unit: unitOf('length').size,
      format: distance,
    });
  }

  #drawPath(sheet: Sheet, state: DescentState): void {
    // the path believed does not lead to where the lander is in truth
    const now = this.#underTruth?.isLive === false ? [] : [{ x: state.x, y: state.y, seconds: state.tick / TICK_RATE }];
    drawTrail(sheet, [...this.#left.trail, ...now], {
      lifted: (this.#times - 1) * (state.y - this.#feetY(state)),
      every: TRAIL_MARKS,
      words: trailTime,
      clear: 2.2 * this.#times * this.#figure.halfStance,
    });
  }

  #drawSpot(sheet: Sheet, { site: { spot }, stage }: TableView): void {
    if (spot === undefined || stage !== 'descending') return;
    drawSpotMark(sheet, {
      x: spot.meters,
      groundY: this.#groundAt(spot.meters).y,
      approach: spot.approach,
      words: this.#figures.spot,
    });
  }

  #drawLander(sheet: Sheet, state: DescentState): void {
    const { maxThrust, gravity, fullPropellant } = this.#source;
    const { puffs, prints } = this.#left;
    const terrain = this.#ground;
    // what cannot be used is not drawn: a tank that ran dry looks it
    const pose = onGround(poseOf(state, this.#figure, state.propellant / Math.max(1, fullPropellant)), terrain);
    const throttle = state.thrust / maxThrust;
    drawShadow(sheet, cornersOf(landerExtent(this.#figure, pose)), terrain);
    drawFootprint(sheet, this.#groundAt(pose.feet[0].x), this.#groundAt(pose.feet[1].x));
    drawPrints(sheet, prints, { terrain, padRadius: this.#figure.padRadius });
    drawDust(sheet, { puffs, now: this.#now, terrain, gravity });
    const nearer = this.#nearer(sheet, state);
    drawPlume({ ...nearer, time: this.#now }, this.#figure, pose, throttle, state.height / this.#times);
    drawLander(nearer.pen, nearer.camera, this.#figure, pose);
    this.#labels.block(onSheet(nearer.camera, landerExtent(this.#figure, pose)));
    const struck = state.touchdown === undefined ? undefined : hullOnGround(this.#figure, state, terrain);
    if (struck !== undefined) drawStrike(sheet, struck);
  }

  #drawStability(ground: Sheet, state: DescentState): void {
    const sheet = this.#nearer(ground, state);
    const { pen, camera } = sheet;
    const pose = onGround(poseOf(state, this.#figure), this.#ground);
    if (Math.cos(state.angle) > FALLEN)
      drawProtractor(sheet, {
        foot: pose.feet[this.#side === 'right' ? 1 : 0],
        center: state,
        side: this.#side,
        words: this.#figures.tilt,
        alpha: ramp(camera.framing.scale / pen.unit, 18, 30),
      });
    drawPlumbLine(sheet, { ...state, groundY: this.#groundOn(ground, sheet, state.x) });
  }

  #drawMotion(ground: Sheet, state: DescentState, view: TableView): void {
    const { gravity, maxThrust } = this.#source;
    const sheet = this.#nearer(ground, state);
    const { pen, camera } = sheet;
    // before a descent nothing moves, and the lobby lies over where its figures would stand
    if (state.touchdown === undefined && view.stage !== 'gathering') {
      const { thrustPercent, tiltDeg } = view.commanded;
      const lean = (-tiltDeg * Math.PI) / 180;
      const push = ((thrustPercent / 100) * maxThrust * Math.sin(lean)) / state.mass;
      drawSpeedVector(sheet, {
        x: state.x,
        y: state.y,
        speed: state.vx,
        leadsTo: state.vx + push * LOOK_AHEAD,
        limit: this.#limit,
        side: this.#side,
        clear: 1.1 * this.#figure.halfStance,
        unitsPerSpeed: UNITS_PER_SPEED * Math.sqrt(REFERENCE_GRAVITY / gravity),
        inForce: view.site.limitHundredths === undefined ? undefined : view.site.limitHundredths / 100,
        limitWords: this.#figures.limit,
        speedWords: this.#figures.speed,
        speedShort: this.#figures.speedShort,
        speedBare: this.#figures.speedBare,
      });
      const reach = Math.max(this.#figure.hull.top - this.#figure.centerHeight, 0.8 * this.#figure.halfStance);
      drawAttitude(sheet, {
        x: state.x,
        y: state.y,
        radius: 1.42 * reach,
        angle: state.angle,
        commanded: (tiltDeg * Math.PI) / 180,
        alpha: 1,
      });
    }
    drawCenterOfMass(pen, camera.sheetX(state.x), camera.sheetY(state.y), state.angle, 8 * pen.unit);
  }

  #drawMeasures(sheet: Sheet, state: DescentState): void {
    const pose = poseOf(state, this.#figure);
    const toward = pose.feet[this.#side === 'right' ? 1 : 0];
    const away = pose.feet[this.#side === 'right' ? 0 : 1];
    if (state.touchdown === undefined && state.height > 0.05) {
      const nearer = this.#nearer(sheet, state);
      const side = this.#side === 'right' ? 'left' : 'right';
      drawHeight(nearer, {
        foot: away,
        groundY: this.#groundOn(sheet, nearer, away.x),
        side,
        words: this.#figures.height,
      });
      const { times, timesShort } = this.#figures;
      drawTimes(nearer, { foot: away, centerY: state.y, side, words: times, short: timesShort });
    }
    drawSlope(sheet, {
      from: this.#groundAt(toward.x),
      slope: state.slope,
      side: this.#side,
      words: this.#figures.slope,
    });
    drawScaleBar(sheet, { unit: unitOf('length').size, format: distance });
  }
}

/** How far one is to the right of and above another [m]. */
function apartOf(one: DescentState, other: DescentState): { readonly right: number; readonly up: number } {
  return { right: one.x - other.x, up: one.y - other.y };
}

/** Its upper corners, and where it stands. */
function cornersOf({ left, right, top, bottom }: Bounds): readonly Spot[] {
  return [left, right].flatMap((x) => [top, bottom].map((y) => ({ x, y })));
}

/** A stretch of the section [m] on the sheet [px]. */
function onSheet(camera: SectionCamera, part: Bounds): Bounds {
  return {
    left: camera.sheetX(part.left),
    right: camera.sheetX(part.right),
    top: camera.sheetY(part.top),
    bottom: camera.sheetY(part.bottom),
  };
}
