import { groundHeight, type Profile } from '../../engine/ground/index.ts';
import type { MarkedSpot } from '../../engine/table/index.ts';
import type { Pen } from '../ink/pen.ts';
import { PencilPen } from '../ink/pencilPen.ts';
import { SvgPen } from '../ink/svgPen.ts';
import { SITE_CARD } from '../text/en.ts';
import { drawArrow } from '../views/arrow.ts';
import { levelParts, type Stretch } from './stretchAhead.ts';

/** What the profile is drawn from. Places in the section [m]. */
export interface ProfileReading {
  readonly profile: Profile;
  readonly stretch: Stretch;
  /** As it is believed, or as it is. */
  readonly drawnIn: 'pencil' | 'ink';
  readonly x: number;
  /** Where it meets the ground if it goes on as it moves now; undefined where that is not known. */
  readonly headingFor: number | undefined;
  readonly spot: MarkedSpot | undefined;
  readonly halfStance: number;
}

const WIDTH = 320;
const HEIGHT = 112;
/** Where the lowest ground lies, and how high the highest may reach. */
const LOWEST = HEIGHT - 16;
const RELIEF = 54;
/** The lander is named, not drawn: it hangs over its place, whatever its height. */
const LANDER = 14;
/** Heights may be drawn so many times as large as widths. */
const TIMES = [4, 2, 1] as const;

/** Slopes up to this count as level enough to be shown so [rad]; ours, for the eye alone: limits depend on the speed. */
export const LEVEL_ENOUGH = Math.PI / 45;

/** The ground of a stretch from the side, the lander over it, where it is heading, and the spot that is marked. `times`: heights against widths. */
export function drawProfile(reading: ProfileReading): {
  readonly markup: string;
  readonly viewBox: string;
  readonly times: number;
} {
  const { profile, stretch, drawnIn } = reading;
  const carrier = new SvgPen(1, 'profile');
  const pen: Pen = drawnIn === 'pencil' ? new PencilPen(carrier) : carrier;
  const scale = WIDTH / (stretch.to - stretch.from);
  const places = Array.from({ length: 161 }, (_, index) => stretch.from + ((stretch.to - stretch.from) * index) / 160);
  const heights = places.map((place) => groundHeight(profile, place));
  const lowest = Math.min(...heights);
  const relief = Math.max(...heights) - lowest;
  const times =
    TIMES.find((candidate) => candidate * relief * scale <= RELIEF) ?? RELIEF / Math.max(1e-9, relief * scale);
  const across = (place: number) => (place - stretch.from) * scale;
  const ground = (place: number) => LOWEST - (groundHeight(profile, place) - lowest) * scale * times;
  drawGround(pen, places, { across, ground, bottom: HEIGHT });
  drawLevel(carrier, levelParts(stretch, profile, { halfStance: reading.halfStance, most: LEVEL_ENOUGH }), {
    across,
    ground,
  });
  drawLander(pen, reading, { across, ground });
  if (reading.spot !== undefined) drawSpot(carrier, reading.spot, stretch, { across, ground });
  return { markup: carrier.markup, viewBox: `0 0 ${WIDTH} ${HEIGHT}`, times };
}

interface Places {
  readonly across: (place: number) => number;
  readonly ground: (place: number) => number;
}

function drawGround(
  pen: Pen,
  places: readonly number[],
  { across, ground, bottom }: Places & { bottom: number },
): void {
  const trace = () => {
    for (const [index, place] of places.entries())
      if (index === 0) pen.moveTo(across(place), ground(place));
      else pen.lineTo(across(place), ground(place));
  };
  trace();
  pen.lineTo(WIDTH, bottom);
  pen.lineTo(0, bottom);
  pen.close();
  pen.paint({ fill: 'soil' });
  trace();
  pen.paint({ stroke: 'ink', width: 'outline' });
}

/** A second line under the ground where it is level enough. */
function drawLevel(pen: Pen, parts: readonly Stretch[], { across, ground }: Places): void {
  for (const { from, to } of parts) {
    const steps = Math.max(1, Math.round((across(to) - across(from)) / 4));
    for (let step = 0; step <= steps; step += 1) {
      const place = from + ((to - from) * step) / steps;
      if (step === 0) pen.moveTo(across(place), ground(place) + 5);
      else pen.lineTo(across(place), ground(place) + 5);
    }
  }
  if (parts.length > 0) pen.paint({ stroke: 'blue', width: 'thick' });
}

function drawLander(pen: Pen, { x, headingFor }: ProfileReading, { across, ground }: Places): void {
  const at = across(x);
  pen.moveTo(at, LANDER);
  pen.lineTo(at, ground(x));
  pen.paint({ stroke: 'pencil', width: 'hair', dash: 'chain' });
  pen.moveTo(at - 7, LANDER + 5);
  pen.lineTo(at, LANDER - 8);
  pen.lineTo(at + 7, LANDER + 5);
  pen.close();
  pen.paint({ fill: 'card', stroke: 'ink', width: 'outline' });
  if (headingFor === undefined) return;
  const end = { x: across(headingFor), y: ground(headingFor) };
  pen.moveTo(at, LANDER + 5);
  pen.lineTo(end.x, end.y);
  pen.paint({ stroke: 'pencil', width: 'thin', dash: 'fine' });
  pen.arc(end.x, end.y, 5, 0, 2 * Math.PI);
  pen.paint({ fill: 'card', stroke: 'ink', width: 'outline' });
}

/** A flag on the ground, its arrow the way to come in; at the edge, which way it lies, where it is beyond. Said, so it is in ink. */
function drawSpot(pen: Pen, { meters, approach }: MarkedSpot, stretch: Stretch, { across, ground }: Places): void {
  if (meters < stretch.from || meters > stretch.to) {
    const isLeft = meters < stretch.from;
    const edge = isLeft ? 6 : WIDTH - 6;
    drawArrow(pen, {
      fromX: edge + (isLeft ? 18 : -18),
      fromY: 40,
      toX: edge,
      toY: 40,
      tone: 'ink',
      shaft: 'thick',
      head: 6,
    });
    pen.text(SITE_CARD.spot, edge + (isLeft ? 24 : -24), 45, {
      size: 13.5,
      align: isLeft ? 'left' : 'right',
      halo: 'card',
    });
    return;
  }
  const x = across(meters);
  const foot = ground(meters);
  pen.moveTo(x, foot);
  pen.lineTo(x, foot - 30);
  pen.paint({ stroke: 'ink', width: 'outline' });
  pen.moveTo(x, foot - 30);
  pen.lineTo(x + 11, foot - 25);
  pen.lineTo(x, foot - 20);
  pen.close();
  pen.paint({ fill: 'ink' });
  if (approach === 'either way') return;
  const toward = approach === 'to the right' ? 1 : -1;
  drawArrow(pen, {
    fromX: x - toward * 24,
    fromY: foot - 11,
    toX: x - toward * 4,
    toY: foot - 11,
    tone: 'ink',
    shaft: 'thin',
    head: 5,
  });
}
