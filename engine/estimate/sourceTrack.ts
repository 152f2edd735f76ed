import type { Reading } from '../sensors/reading.ts';
import { CHANNELS, type Source } from '../sensors/sources.ts';
import { TIMINGS } from '../sensors/timings.ts';
import { TICK_RATE } from '../world/constants.ts';

/** What the automatic check says of a source. */
export const SOURCE_STATES = ['valid', 'suspect', 'stale', 'failed', 'no data'] as const;
export type SourceState = (typeof SOURCE_STATES)[number];

/** What the crew says of a source. Without a word from it a source is accepted. */
export const JUDGMENTS = ['accepted', 'under check', 'rejected'] as const;
export type Judgment = (typeof JUDGMENTS)[number];

export type Judgments = Readonly<Partial<Record<Source, Judgment>>>;

/** A source whose last report is older than this many of its periods is stale [-]. */
const STALE_PERIODS = 2.5;
/** A source that has been silent for this long beyond its period and latency gives no data [tick]: 2 s. */
const SILENT_TICKS = 2 * TICK_RATE;
/** So many reports outside the gate, less those inside since, make a source suspect; more are not counted, so that it can recover. */
const SUSPECT_FROM = 3;
const MOST_OUTSIDE = 8;

/** What the filter keeps of one source. Plain data. */
export interface SourceTrack {
  /** Reports outside the gate, less those inside since; 0 to MOST_OUTSIDE. */
  outside: number;
  /** Tick of the first of the reports outside, without one inside since; -1: the last was inside [tick]. */
  outsideSince: number;
  /** The last report was taken into the estimate. */
  isUsed: boolean;
  /** Tick in which a report was last taken into the estimate; -1 before one was [tick]. */
  usedTick: number;
  /** Last report less what was expected, one a channel, in the unit of the channel. Zero for sources that the filter does not weigh. */
  readonly innovation: number[];
  /** What that should be by standard deviation; 0 before there was one. */
  readonly deviation: number[];
}

export function createTrack(source: Source): SourceTrack {
  const none = CHANNELS[source].map(() => 0);
  return { outside: 0, outsideSince: -1, isUsed: false, usedTick: -1, innovation: none, deviation: [...none] };
}

/** Notes whether a report was inside the gate, in this tick. */
export function noteReport(track: SourceTrack, isInside: boolean, tick: number): void {
  if (isInside) {
    track.outside = Math.max(0, track.outside - 1);
    track.outsideSince = -1;
    return;
  }
  track.outside = Math.min(MOST_OUTSIDE, track.outside + 1);
  if (track.outsideSince < 0) track.outsideSince = tick;
}

/** Age of what a source says: since its sample, as far as the sensor tells [tick]. */
export function ageTicks(source: Source, reading: Reading, tick: number): number {
  return tick - reading.arrivedTick + TIMINGS[source].latency;
}

/** The automatic check of a source in this tick: what is silent or cannot measure gives no data; what measures and calls itself invalid has failed. */
export function checkSource(source: Source, reading: Reading, track: SourceTrack, tick: number): SourceState {
  const { period, latency } = TIMINGS[source];
  const age = ageTicks(source, reading, tick);
  if (reading.arrivedTick < 0 || age > period + latency + SILENT_TICKS) return 'no data';
  if (age > STALE_PERIODS * period + latency) return 'stale';
  if (!reading.isValid) return reading.hasLock ? 'failed' : 'no data';
  return track.outside >= SUSPECT_FROM ? 'suspect' : 'valid';
}
