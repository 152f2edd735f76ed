import type { BeliefSpread, PredictedMargin, TableView } from '../../engine/table/index.ts';
import type { DescentState } from '../../engine/world/index.ts';
import { CALLOUT_WORDS, SECTION } from '../text/en.ts';
import { enlargementAt } from '../camera/enlargement.ts';
import { isLevel } from '../text/ground.ts';
import { BAND } from '../views/beliefBand.ts';
import { outerLeg } from './pose.ts';
import { about, decimal, degrees, distance, speed } from '../text/numbers.ts';

/** The figures that stand on the drawing. They change a few times a second, not every frame. */
export interface Figures {
  readonly limit: string;
  readonly speed: string;
  readonly speedShort: string;
  readonly speedBare: string;
  readonly height: string;
  readonly tilt: string;
  readonly slope: string;
  /** How far off the marked spot is; nothing where none is marked. */
  readonly spot: string;
  /** How many times as large as the section the lander is drawn; nothing where it is as large. */
  readonly times: string;
  readonly timesShort: string;
}

export const NO_FIGURES: Figures = {
  limit: '',
  speed: '',
  speedShort: '',
  speedBare: '',
  height: '',
  tilt: '',
  slope: '',
  spot: '',
  times: '',
  timesShort: '',
};

/** Slower than this the lander counts as going straight down [m/s]. */
const STANDSTILL = 0.05;
/** A limit below this reads as none [m/s]. */
const NO_LIMIT = 0.005;

/** `side`: to which the lander drifts, and over whose foot it would turn. */
export function figuresOf({ flight, margin, spread, site }: TableView, side: 'left' | 'right'): Figures {
  const { slope, vx } = flight;
  const callout = margin.predicted && CALLOUT_WORDS[margin.predicted.callout];
  const drift = Math.abs(vx);
  const hasDirection = drift >= STANDSTILL && !isLevel(slope);
  const direction = hasDirection ? (vx * slope < 0 ? SECTION.downhill : SECTION.uphill) : '';
  return {
    limit: limitWords(margin.predicted),
    speed: SECTION.speed(speed(drift), direction, callout),
    speedBare: speed(drift),
    speedShort: SECTION.speed(speed(drift), '', callout),
    height: heightWords(flight.height, spread),
    tilt: tiltWords(angleToFall(flight, side)),
    slope: isLevel(slope) ? SECTION.level : SECTION.slope(degrees(Math.abs(slope))),
    spot: site.spot === undefined ? '' : SECTION.spot(distance(Math.abs(site.spot.meters - flight.x), 0)),
    times: timesWords(flight.height, SECTION.times),
    timesShort: timesWords(flight.height, SECTION.timesShort),
  };
}

/** With how far it may be off, where it is believed and not known. */
function heightWords(height: number, spread: BeliefSpread | undefined): string {
  const up = Math.max(0, height);
  return spread === undefined ? distance(up) : about(up, BAND * spread.height, 1);
}

function timesWords(height: number, words: (times: string) => string): string {
  const times = decimal(enlargementAt(height), 1);
  return times === '1.0' ? '' : words(times);
}

function limitWords(predicted: PredictedMargin | undefined): string {
  if (predicted === undefined) return '';
  return predicted.limit < NO_LIMIT ? SECTION.noLimit : SECTION.tipLimit(speed(predicted.limit));
}

/** Past the balance nothing is left until it falls: it does. */
function tiltWords(toFall: number): string {
  return toFall > 0 ? SECTION.tiltLeft(degrees(toFall, 0)) : SECTION.pastBalance;
}

/** The side over which a lander at rest falls soonest. */
export function sideToFall(state: DescentState): 'left' | 'right' {
  return angleToFall(state, 'left') < angleToFall(state, 'right') ? 'left' : 'right';
}

/**
 * Angle that the drawing shows between the upright through the foot and the line to the center of mass [rad].
 *
 *   left = atan2(d, z)                                 geometry, same as the scorecard's
 *
 * d  foot ahead of the center of mass, toward that side [m]      z  center of mass above the foot [m]
 */
function angleToFall(state: DescentState, side: 'left' | 'right'): number {
  const foot = outerLeg(state, side);
  if (foot === undefined) return 0;
  const ahead = (foot.footX - state.x) * (side === 'right' ? 1 : -1);
  return Math.atan2(ahead, state.y - foot.footY);
}
