import type { TableView } from '../../engine/table/index.ts';
import { TICK_RATE } from '../../engine/world/index.ts';
import type { Pen } from '../ink/pen.ts';
import { PencilPen } from '../ink/pencilPen.ts';
import { SvgPen } from '../ink/svgPen.ts';
import { PLAN_DRAWING } from '../text/en.ts';
import { bare, seconds, unitOf } from '../text/numbers.ts';
import { descentRateAim } from './advice.ts';

/** A height at a moment of the descent [s], [m]. */
export interface HeightAt {
  readonly seconds: number;
  readonly height: number;
}

/** One point of the path is kept for so many ticks. */
const EVERY = TICK_RATE;

/** The heights that were shown so far, one a second; a tick that goes back begins another descent. */
export class HeightHistory {
  #points: HeightAt[] = [];
  #lastTick = -Infinity;

  take(tick: number, height: number): void {
    if (tick < this.#lastTick) {
      this.#points = [];
      this.#lastTick = -Infinity;
    }
    if (tick - this.#lastTick < EVERY) return;
    this.#lastTick = tick;
    this.#points.push({ seconds: tick / TICK_RATE, height });
  }

  get points(): readonly HeightAt[] {
    return this.#points;
  }
}

/** How the height would go from there if it came down as the brief of the drill or the coach has it, a point a second, to the ground. */
export function aimedHeights(start: HeightAt, drill: TableView['drill']): readonly HeightAt[] {
  const points: HeightAt[] = [start];
  for (let { seconds: at, height } = start; height > 0 && points.length < LONGEST;) {
    at += 1;
    height = Math.max(0, height - descentRateAim(height, drill));
    points.push({ seconds: at, height });
  }
  return points;
}

/** No descent is planned for longer [s]. */
const LONGEST = 900;

const WIDTH = 320;
const HEIGHT = 128;
const LEFT = 34;
const RIGHT = 10;
const TOP = 10;
const GROUND = HEIGHT - 20;
/** Rulings of the two axes: s, and the viewer's unit of length. */
const TIMES = [5, 10, 20, 30, 60, 120, 300];
const HEIGHTS = [5, 10, 20, 50, 100, 200, 500, 1000, 2000];
const MOST_RULINGS = 5;

/** Height against time: what is aimed at in light pencil, what was flown so far, and where it leads as it comes down now. */
export function drawPlan(reading: {
  readonly flown: readonly HeightAt[];
  readonly now: HeightAt;
  /** [m/s], positive downwards. */
  readonly rate: number;
  readonly drawnIn: 'pencil' | 'ink';
  readonly drill: TableView['drill'];
}): { readonly markup: string; readonly viewBox: string } {
  const { flown, now, rate, drawnIn, drill } = reading;
  const start = flown[0] ?? now;
  const aimed = aimedHeights(start, drill);
  const latest = Math.max(aimed.at(-1)?.seconds ?? 0, now.seconds) + 5;
  const highest = Math.max(...[...flown, now].map(({ height }) => height), 1);
  const x = (at: number) => LEFT + ((at - start.seconds) / (latest - start.seconds)) * (WIDTH - LEFT - RIGHT);
  const y = (height: number) => GROUND - (Math.max(0, height) / highest) * (GROUND - TOP);
  const carrier = new SvgPen(1, 'plan');
  const pen: Pen = drawnIn === 'pencil' ? new PencilPen(carrier) : carrier;
  drawAxes(carrier, { x, y, from: start.seconds, latest, highest });
  trace(carrier, aimed, x, y);
  carrier.paint({ stroke: 'hatch', width: 'outline' });
  trace(pen, [...flown, now], x, y);
  pen.paint({ stroke: 'ink', width: 'thick' });
  if (rate > 0.1) {
    const downAt = now.seconds + now.height / rate;
    const end = Math.min(latest, downAt);
    trace(carrier, [now, { seconds: end, height: now.height - rate * (end - now.seconds) }], x, y);
    carrier.paint({ stroke: 'ink', width: 'thin', dash: 'fine' });
  }
  carrier.arc(x(now.seconds), y(now.height), 4.5, 0, 2 * Math.PI);
  carrier.paint({ fill: 'card', stroke: 'ink', width: 'outline' });
  return { markup: carrier.markup, viewBox: `0 0 ${WIDTH} ${HEIGHT}` };
}

type Along = (value: number) => number;

function trace(pen: Pen, points: readonly HeightAt[], x: Along, y: Along): void {
  for (const [index, { seconds: at, height }] of points.entries())
    if (index === 0) pen.moveTo(x(at), y(height));
    else pen.lineTo(x(at), y(height));
}

function drawAxes(
  pen: Pen,
  axes: {
    readonly x: Along;
    readonly y: Along;
    readonly from: number;
    readonly latest: number;
    readonly highest: number;
  },
): void {
  const { x, y, from, latest, highest } = axes;
  pen.moveTo(LEFT, TOP - 4);
  pen.lineTo(LEFT, GROUND);
  pen.lineTo(WIDTH - RIGHT, GROUND);
  pen.paint({ stroke: 'ink', width: 'edge' });
  const ruling = TIMES.find((candidate) => (latest - from) / candidate <= MOST_RULINGS) ?? LONGEST;
  for (let at = Math.ceil(from / ruling) * ruling; at <= latest; at += ruling)
    pen.text(seconds(at), x(at), GROUND + 15, { size: 12, align: 'center', tone: 'pencil' });
  const unit = unitOf('length');
  const step = HEIGHTS.find((candidate) => highest / (candidate * unit.size) <= MOST_RULINGS) ?? 5000;
  for (let level = step; level * unit.size <= highest; level += step) {
    pen.moveTo(LEFT - 4, y(level * unit.size));
    pen.lineTo(LEFT, y(level * unit.size));
    pen.text(bare('length', level * unit.size, 0), LEFT - 6, y(level * unit.size) + 4, {
      size: 12,
      align: 'right',
      tone: 'pencil',
    });
  }
  pen.paint({ stroke: 'ink', width: 'thin' });
  // it comes down from the left: there it would stand under the path
  pen.text(PLAN_DRAWING.height(unit.sign), WIDTH - RIGHT, TOP + 4, { size: 12, align: 'right', tone: 'pencil' });
}
