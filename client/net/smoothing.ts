import type { DescentState } from '../../engine/world/index.ts';

/**
 * Turns readings that come in steps (60 a second here, 20 from a server) into motion for every frame. It shows the past
 * by a little more than the time between two readings, so that it lies between two known ones and nothing is guessed.
 */
export interface Smoothing {
  /** Takes a reading as it comes; the same one again is fine. */
  take(flight: DescentState, nowMs: number): void;
  /** What to draw now; undefined before the first reading. Numbers to read aloud belong to the newest view instead. */
  at(nowMs: number): DescentState | undefined;
}

/** Ticks a second. */
const RATE = 60;

/** Readings remembered; enough for a third of a second from a server. */
const REMEMBERED = 8;

/** Shown delay beyond the time between two readings [ticks]: what the network may vary by. */
const SLACK_TICKS = 1;

/** Part of the error of the shown time that is made up for in each second [1/s]. */
const CATCH_UP = 2;

export function createSmoothing(): Smoothing {
  let readings: DescentState[] = [];
  /** Shown time [ticks], and when it was brought up to date. */
  let shown = 0;
  let updatedMs = 0;

  return {
    take(flight, nowMs) {
      const newest = readings.at(-1);
      if (newest !== undefined && flight.tick === newest.tick) {
        readings[readings.length - 1] = flight;
        return;
      }
      if (newest === undefined || flight.tick < newest.tick) {
        // the first reading, or a new descent
        readings = [flight];
        shown = flight.tick;
        updatedMs = nowMs;
        return;
      }
      readings.push(flight);
      if (readings.length > REMEMBERED) readings.shift();
    },
    at(nowMs) {
      const newest = readings.at(-1);
      const oldest = readings[0];
      if (newest === undefined || oldest === undefined) return undefined;
      const seconds = Math.max(0, nowMs - updatedMs) / 1000;
      updatedMs = nowMs;
      const between = newest.tick - (readings.at(-2)?.tick ?? newest.tick);
      const wanted = newest.tick - between - (between > 1 ? SLACK_TICKS : 0);
      const advanced = shown + seconds * RATE;
      const corrected = advanced + (wanted + seconds * RATE - advanced) * Math.min(1, seconds * CATCH_UP);
      shown = Math.min(newest.tick, Math.max(oldest.tick, corrected));
      return readingAt(readings, shown);
    },
  };
}

function readingAt(readings: readonly DescentState[], tick: number): DescentState | undefined {
  const later = readings.findIndex((reading) => reading.tick >= tick);
  const after = readings[later];
  const before = readings[later - 1];
  if (after === undefined || before === undefined) return after ?? readings.at(-1);
  return mix(before, after, (tick - before.tick) / (after.tick - before.tick));
}

/** The later reading, with everything that moves taken straight between the two. */
function mix(before: DescentState, after: DescentState, share: number): DescentState {
  const between = (a: number, b: number) => a + (b - a) * share;
  return {
    ...after,
    x: between(before.x, after.x),
    y: between(before.y, after.y),
    vx: between(before.vx, after.vx),
    vy: between(before.vy, after.vy),
    angle: between(before.angle, after.angle),
    rate: between(before.rate, after.rate),
    thrust: between(before.thrust, after.thrust),
    height: between(before.height, after.height),
    slope: between(before.slope, after.slope),
    legs: after.legs.map((leg, i) => {
      const from = before.legs[i] ?? leg;
      return {
        ...leg,
        footX: between(from.footX, leg.footX),
        footY: between(from.footY, leg.footY),
        stroke: between(from.stroke, leg.stroke),
        strokeUsed: between(from.strokeUsed, leg.strokeUsed),
      };
    }),
  };
}
