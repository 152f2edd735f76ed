import type { DescentState, LegState } from '../../engine/world/index.ts';

/**
 * Turns readings that come in steps (60 a second here, 20 from a server) into motion for every frame. It shows the past
 * by a little more than the time between two readings, so that it lies between two known ones and nothing is guessed.
 */
export interface Smoothing {
  /** Takes a reading as it comes, with the pace at which more will come; the same one again is fine. */
  take(flight: DescentState, nowMs: number, pace: number): void;
  /** What to draw now; undefined before the first reading. Numbers to read aloud belong to the newest view instead. */
  at(nowMs: number): DescentState | undefined;
}

/** Ticks a second at pace 1. */
const RATE = 60;

/** Readings remembered; enough for a third of a second from a server. */
const REMEMBERED = 8;

/**
 * Shown delay beyond the most ticks between two readings [ticks]: what the network may vary by. At a slower pace also what readings fall beside the
 * sendings: with a tick every fourth and a sending every third step, a new reading may be half as late again.
 */
const SLACK_TICKS = 1;

/** Part of the error of the shown time that is made up for in each second [1/s]. */
const CATCH_UP = 2;

export function createSmoothing(): Smoothing {
  let readings: DescentState[] = [];
  /** Shown time [ticks], and when it was brought up to date. */
  let shown = 0;
  let updatedMs = 0;
  let pace = 1;

  return {
    take(flight, nowMs, paceNow) {
      pace = paceNow;
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
      const between = pace < 1 ? mostBetween(readings) : newest.tick - (readings.at(-2)?.tick ?? newest.tick);
      const wanted = newest.tick - between - (between > 1 || pace < 1 ? SLACK_TICKS : 0);
      const ticks = seconds * RATE * pace;
      const advanced = shown + ticks;
      const corrected = advanced + (wanted + ticks - advanced) * Math.min(1, seconds * CATCH_UP);
      shown = Math.min(newest.tick, Math.max(oldest.tick, corrected));
      return readingAt(readings, shown);
    },
  };
}

/** Most ticks from one remembered reading to the next: they come unevenly where a tick is no whole number of sendings. */
function mostBetween(readings: readonly DescentState[]): number {
  return Math.max(0, ...readings.slice(1).map(({ tick }, i) => tick - (readings[i]?.tick ?? tick)));
}

function readingAt(readings: readonly DescentState[], tick: number): DescentState | undefined {
  const later = readings.findIndex((reading) => reading.tick >= tick);
  const after = readings[later];
  const before = readings[later - 1];
  if (after === undefined || before === undefined) return after ?? readings.at(-1);
  return readingBetween(before, after, (tick - before.tick) / (after.tick - before.tick));
}

function movedBy(leg: LegState, x: number, y: number): LegState {
  return { ...leg, footX: leg.footX + x, footY: leg.footY + y };
}

/** The later reading, with everything that moves taken straight between the two. `share` [-]: of the way to it. */
export function readingBetween(before: DescentState, after: DescentState, share: number): DescentState {
  const between = (a: number, b: number) => a + (b - a) * share;
  const isTurned = (before.facing?.steps ?? 0) !== (after.facing?.steps ?? 0);
  // what is left to the reading that has the edge is turned back from it
  const back = (before.facing?.yaw ?? 0) - (after.facing?.yaw ?? 0);
  const facing = after.facing && {
    ...after.facing,
    yaw: after.facing.yaw + back * (1 - share),
    rest: after.facing.rest + back * (1 - share),
  };
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
    ...(facing && { facing }),
    legs: after.legs.map((leg, i) => {
      // another edge has come to the right: the legs have changed places, and what is between those is nowhere
      const from = isTurned ? movedBy(leg, before.x - after.x, before.y - after.y) : (before.legs[i] ?? leg);
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
