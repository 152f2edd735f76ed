import type { Lander } from '../../engine/lander/index.ts';
import type { Seat, TableView } from '../../engine/table/index.ts';
import { TICK_RATE } from '../../engine/world/index.ts';
import { findWorld } from '../../engine/worlds.ts';
import { CALLOUT_WORDS, CONTROLS, NO_MARGIN_WORDS, ORDERS, type READINGS, SECTION, SOURCES_CARD } from '../text/en.ts';
import { about, degrees, distance, percent, seconds, speed } from '../text/numbers.ts';
import { aheadWords } from './siteWords.ts';

/** What the readings need beside the view. */
export interface ReadingContext {
  /** Of the engine [N]. */
  readonly maxThrust: number;
  /** Propellant burned for a newton second [kg/(N·s)]. */
  readonly burnPerImpulse: number;
}

export function readingContext({ engine }: Pick<Lander, 'engine'>): ReadingContext {
  const { maxThrust, specificImpulse } = engine;
  return { maxThrust, burnPerImpulse: 1 / (specificImpulse * (findWorld('earth')?.gravity ?? 1)) };
}

export type ReadingName = keyof typeof READINGS;

/** At most four critical readings a seat. */
export const SEAT_READINGS: Readonly<Record<Seat | 'observer', readonly ReadingName[]>> = {
  lead: ['timeToContact', 'height', 'margin', 'drift'],
  flying: ['height', 'descentRate', 'drift', 'tilt'],
  sensors: ['height', 'descentRate', 'drift', 'used'],
  propellant: ['lasts', 'timeToContact', 'descentRate', 'thrust'],
  site: ['toSpot', 'drift', 'margin', 'timeToContact'],
  observer: ['height', 'descentRate', 'drift', 'margin'],
};

/** Slower than this, there is no direction worth naming [m/s], [rad]. */
const NO_DRIFT = 0.05;
const NO_TILT = 0.0087;
/** A height that may be off by this much says so [m]. */
const WORTH_SAYING = 1;

export function readingText(name: ReadingName, view: TableView, context: ReadingContext): string {
  const { flight, margin } = view;
  switch (name) {
    case 'height':
      return heightText(view);
    case 'descentRate':
      return speed(-flight.vy, 1);
    case 'drift':
      return Math.abs(flight.vx) < NO_DRIFT
        ? speed(0, 1)
        : `${speed(Math.abs(flight.vx))}${flight.vx > 0 ? ' →' : ' ←'}`;
    case 'tilt':
      return tiltText(turnedBack(flight.angle));
    case 'thrust':
      return percent(flight.thrust / context.maxThrust);
    case 'margin':
      return margin.predicted === undefined || view.aborting ? '–' : speed(margin.predicted.speedMargin);
    case 'lasts':
      return view.propellantReadings === undefined ? '–' : seconds(Math.floor(view.propellantReadings.seconds));
    case 'toSpot':
      return view.site.spot === undefined ? '–' : aheadWords(view.site.spot.meters, flight.x);
    case 'used':
      return usedWords(view.sources);
    case 'timeToContact':
      return flight.vy < -0.05 && flight.height > 0 && !view.aborting ? seconds(flight.height / -flight.vy) : '–';
  }
  return name satisfies never;
}

/** How many of the sources that are weighed go into what is believed. */
function usedWords(sources: TableView['sources']): string {
  const weighed = sources?.filter(({ disagreement }) => disagreement !== undefined) ?? [];
  return weighed.length === 0 ? '–' : SOURCES_CARD.used(weighed.filter(({ isUsed }) => isUsed).length, weighed.length);
}

/** With how far it may be off, where that is worth knowing: a height that nobody measures any more must not look like one that somebody does. */
function heightText({ flight, spread }: TableView): string {
  const height = Math.max(0, flight.height);
  const off = 2 * (spread?.height ?? 0);
  return off < WORTH_SAYING ? distance(height) : about(height, off);
}

function tiltText(angle: number): string {
  if (Math.abs(angle) < NO_TILT) return degrees(0);
  return `${degrees(Math.abs(angle))} ${angle > 0 ? CONTROLS.left : CONTROLS.right}`;
}

/** The same attitude by the shorter way round, for a lander that has tumbled [rad]. */
function turnedBack(angle: number): number {
  const turns = Math.round(angle / (2 * Math.PI));
  return angle - turns * 2 * Math.PI;
}

/** An ordered descent rate in words [m/s]: '2.0 m/s', '0.5 m/s up'. */
export function descentRateWords(rate: number): string {
  if (rate === 0) return ORDERS.level;
  return rate > 0 ? speed(rate, 1) : ORDERS.up(speed(-rate, 1));
}

/** An ordered drift in words [m/s]: '1.2 m/s →'. */
export function driftWords(drift: number): string {
  if (drift === 0) return ORDERS.noDrift;
  return drift > 0 ? ORDERS.toRight(speed(drift, 1)) : ORDERS.toLeft(speed(-drift, 1));
}

/** A commanded lean in words: '4° left'. */
export function leanWords(tiltDeg: number): string {
  if (tiltDeg === 0) return CONTROLS.degreesUpright;
  return tiltDeg > 0 ? CONTROLS.degreesLeft(tiltDeg) : CONTROLS.degreesRight(-tiltDeg);
}

/** The margin of the contact that is coming, in words: 'inside', and by how much; or why there is none. */
export function marginWords({ margin, aborting }: TableView): string {
  // of a landing that was given up there is no contact to come
  if (aborting) return '';
  const { predicted, without } = margin;
  if (predicted === undefined) return without === undefined ? '' : NO_MARGIN_WORDS[without];
  const { limit, speedMargin, callout } = predicted;
  if (limit < 0.005) return SECTION.noMargin(CALLOUT_WORDS[callout]);
  return SECTION.marginWords(CALLOUT_WORDS[callout], speed(Math.abs(speedMargin)), speedMargin >= 0);
}

/** Seconds since the start of the descent. */
export function descentSeconds(view: TableView): number {
  return view.flight.tick / TICK_RATE;
}
