import type { Pen } from '../ink/pen.ts';
import { SvgPen } from '../ink/svgPen.ts';
import { speed } from '../text/numbers.ts';
import { drawArrow } from '../views/arrow.ts';

/** Speeds [m/s]. */
export interface LimitReading {
  /** For travel to either side; undefined where there is no number. */
  readonly left: number | undefined;
  readonly right: number | undefined;
  /** Positive to the right. */
  readonly drift: number;
  /** As Site stated it. */
  readonly inForce: number | undefined;
}

const WIDTH = 320;
const HEIGHT = 62;
const MIDDLE = WIDTH / 2;
const REACH = MIDDLE - 12;
const ROW = { limit: 30, drift: 46 } as const;
/** Speeds that the ends may stand for [m/s]. */
const ENDS = [0.5, 1, 1.5, 2, 3, 5, 10];

/** The limit to either side as a hollow arrow from the middle, the drift as a filled one under it, and the limit in force as a tick. */
export function drawLimits({ left, right, drift, inForce }: LimitReading): {
  readonly markup: string;
  readonly viewBox: string;
} {
  const pen = new SvgPen(1, 'limits');
  const most = Math.max(left ?? 0, right ?? 0, Math.abs(drift), inForce ?? 0);
  const end = ENDS.find((candidate) => candidate >= most) ?? most;
  const at = (velocity: number) => MIDDLE + (velocity / end) * REACH;
  pen.moveTo(MIDDLE, 20);
  pen.lineTo(MIDDLE, HEIGHT - 4);
  pen.paint({ stroke: 'ink', width: 'thin', dash: 'chain' });
  for (const [limit, toward] of [
    [left, -1],
    [right, 1],
  ] as const) {
    const words = limit === undefined ? '–' : speed(limit);
    pen.text(words, MIDDLE + toward * REACH, 14, { size: 15, align: toward < 0 ? 'left' : 'right', tone: 'blue' });
    if (limit !== undefined && limit > 0) drawLimit(pen, at(toward * limit));
    if (inForce !== undefined) drawTick(pen, at(toward * inForce));
  }
  if (Math.abs(at(drift) - MIDDLE) > 2)
    drawArrow(pen, {
      fromX: MIDDLE,
      fromY: ROW.drift,
      toX: at(drift),
      toY: ROW.drift,
      tone: 'ink',
      shaft: 'thick',
      head: 6,
    });
  return { markup: pen.markup, viewBox: `0 0 ${WIDTH} ${HEIGHT}` };
}

function drawLimit(pen: Pen, to: number): void {
  drawArrow(pen, {
    fromX: MIDDLE,
    fromY: ROW.limit,
    toX: to,
    toY: ROW.limit,
    tone: 'blue',
    shaft: 'edge',
    head: 6,
    hollow: true,
  });
}

function drawTick(pen: Pen, x: number): void {
  pen.moveTo(x, ROW.limit - 8);
  pen.lineTo(x, ROW.drift + 9);
  pen.paint({ stroke: 'ink', width: 'outline', dash: 'fine' });
}
