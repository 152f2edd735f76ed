import type { DescentState, TableView } from '../../engine/index.ts';
import { CALLOUT_WORDS, SECTION } from '../text/en.ts';
import { degrees, meters, speed } from '../text/numbers.ts';

/** The figures that stand on the drawing. They change a few times a second, not every frame. */
export interface Figures {
  readonly limit: string;
  readonly speed: string;
  readonly speedShort: string;
  readonly height: string;
  readonly tilt: string;
  readonly slope: string;
}

export const NO_FIGURES: Figures = { limit: '', speed: '', speedShort: '', height: '', tilt: '', slope: '' };

/** Slower than this the lander counts as going straight down [m/s]; flatter than this ground counts as level [rad]. */
const STANDSTILL = 0.05;
const LEVEL = 0.005;
/** A limit below this reads as none [m/s]. */
const NO_LIMIT = 0.005;

export function figuresOf(state: DescentState, view: TableView): Figures {
  const { slope, vx } = state;
  const drift = Math.abs(vx);
  const hasDirection = drift >= STANDSTILL && Math.abs(slope) >= LEVEL;
  const direction = hasDirection ? (vx * slope < 0 ? SECTION.downhill : SECTION.uphill) : '';
  return {
    limit: view.margin.limit < NO_LIMIT ? SECTION.noLimit : SECTION.tipLimit(speed(view.margin.limit)),
    speed: SECTION.speed(speed(drift), direction, CALLOUT_WORDS[view.margin.callout]),
    speedShort: SECTION.speed(speed(drift), '', CALLOUT_WORDS[view.margin.callout]),
    height: meters(Math.max(0, state.height)),
    tilt: SECTION.tiltLeft(degrees(view.margin.tiltLeft, 0)),
    slope: Math.abs(slope) < LEVEL ? SECTION.level : SECTION.slope(degrees(Math.abs(slope))),
  };
}
