import type { Pen } from '../ink/pen.ts';
import { SvgPen } from '../ink/svgPen.ts';
import { TURN_PART } from '../text/facing.ts';
import { drawArrow } from '../views/arrow.ts';
import type { LegPlace } from './legPlaces.ts';

const WIDTH = 200;
const HEIGHT = 132;
const MIDDLE = { x: WIDTH / 2, y: HEIGHT / 2 } as const;
/** Farthest foot from the middle, and a foot [px]. */
const REACH = 44;
const FOOT = 9;

/** What stands in the plan of the footprint. */
interface FootprintReading {
  /** As the lander stands now, part of a turn included. */
  readonly legs: readonly LegPlace[];
  /** As it is to stand; absent where it does so already. */
  readonly ordered?: readonly LegPlace[];
  readonly uphill: 'left' | 'right' | undefined;
}

/** The footprint from above, the section's right to the right: each leg with its number, one that is not locked as a crossed square, where it is to turn to dashed, and which side is uphill. */
export function drawFootprintPlan({ legs, ordered, uphill }: FootprintReading): {
  readonly markup: string;
  readonly viewBox: string;
} {
  const pen = new SvgPen(1, 'footprint');
  const farthest = Math.max(0.1, ...legs.map(({ across, aside }) => Math.hypot(across, aside)));
  const at = ({ across, aside }: LegPlace) => ({
    x: MIDDLE.x + (across / farthest) * REACH,
    y: MIDDLE.y + (aside / farthest) * REACH,
  });
  pen.moveTo(MIDDLE.x, 6);
  pen.lineTo(MIDDLE.x, HEIGHT - 6);
  pen.paint({ stroke: 'faint', width: 'thin', dash: 'chain' });
  if (ordered !== undefined) {
    drawRing(pen, ordered.map(at));
    pen.paint({ stroke: 'blue', width: 'edge', dash: 'fine' });
  }
  drawRing(pen, legs.map(at));
  pen.paint({ fill: 'card', stroke: 'ink', width: 'edge' });
  for (const leg of legs) drawFoot(pen, at(leg), leg);
  if (uphill !== undefined) drawUphill(pen, uphill === 'right' ? 1 : -1);
  return { markup: pen.markup, viewBox: `0 0 ${WIDTH} ${HEIGHT}` };
}

interface Spot {
  readonly x: number;
  readonly y: number;
}

function drawRing(pen: Pen, feet: readonly Spot[]): void {
  const around = feet.toSorted((a, b) => angleOf(a) - angleOf(b));
  for (const [index, { x, y }] of around.entries())
    if (index === 0) pen.moveTo(x, y);
    else pen.lineTo(x, y);
  pen.close();
}

function angleOf({ x, y }: Spot): number {
  return Math.atan2(y - MIDDLE.y, x - MIDDLE.x);
}

function drawFoot(pen: Pen, { x, y }: Spot, { leg, isWeak }: LegPlace): void {
  if (isWeak) {
    pen.moveTo(x - FOOT, y - FOOT);
    pen.lineTo(x + FOOT, y - FOOT);
    pen.lineTo(x + FOOT, y + FOOT);
    pen.lineTo(x - FOOT, y + FOOT);
    pen.close();
    pen.paint({ fill: 'paper', stroke: 'ink', width: 'outline' });
    for (const slant of [-1, 1]) {
      pen.moveTo(x - FOOT, y - slant * FOOT);
      pen.lineTo(x + FOOT, y + slant * FOOT);
    }
    pen.paint({ stroke: 'ink', width: 'thin' });
  } else {
    pen.arc(x, y, FOOT, 0, 2 * Math.PI);
    pen.paint({ fill: 'paper', stroke: 'ink', width: 'edge' });
  }
  // beside the foot, outward, where the cross does not lie over it
  const out = Math.hypot(x - MIDDLE.x, y - MIDDLE.y) || 1;
  const far = isWeak ? FOOT * 2.1 : 0;
  const [labelX, labelY] = [x + ((x - MIDDLE.x) / out) * far, y + ((y - MIDDLE.y) / out) * far];
  pen.text(String(leg), labelX, labelY + 4.5, { size: 13, align: 'center', tone: 'ink' });
}

function drawUphill(pen: Pen, toward: 1 | -1): void {
  const from = MIDDLE.x + toward * (REACH + 26);
  drawArrow(pen, {
    fromX: from,
    fromY: MIDDLE.y + 12,
    toX: from + toward * 24,
    toY: MIDDLE.y - 6,
    tone: 'ink',
    shaft: 'thick',
    head: 5,
  });
  pen.text(TURN_PART.uphill, toward > 0 ? WIDTH - 2 : 2, MIDDLE.y - 18, {
    size: 13,
    align: toward > 0 ? 'right' : 'left',
    tone: 'ink',
  });
}
