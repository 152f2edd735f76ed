import { channelCount, SOURCES, type Source } from './sources.ts';

/** What one source says now. Plain data; stays as it is until the next report comes. */
export interface Reading {
  /** Tick at which the latest report came; -1 before there was one [tick]. */
  arrivedTick: number;
  /** What the sensor says of its own report. */
  isValid: boolean;
  /** Whether it says that it measured at all: one that could not (out of range, no echo, dust) repeats its last values and is not valid. */
  hasLock: boolean;
  /** One value a channel, see CHANNELS. */
  readonly values: number[];
}

/** What all sensors say. */
export type Readings = Readonly<Record<Source, Reading>>;

/** Something for each source, in the order of SOURCES. */
export function forEachSource<Value>(make: (source: Source) => Value): Readonly<Record<Source, Value>> {
  return {
    inertialUnit: make('inertialUnit'),
    altimeter: make('altimeter'),
    velocityRadar: make('velocityRadar'),
    attitudeReference: make('attitudeReference'),
    surfaceCamera: make('surfaceCamera'),
    propellantGauge: make('propellantGauge'),
    contactProbes: make('contactProbes'),
    legIndications: make('legIndications'),
  };
}

/** Readings of a lander of so many legs, before the first report. */
export function createReadings(legs: number): Readings {
  return forEachSource((source) => ({
    arrivedTick: -1,
    isValid: false,
    hasLock: false,
    values: Array.from({ length: channelCount(source, legs) }, () => 0),
  }));
}

/** Where the source stands in SOURCES. */
export function sourceIndex(source: Source): number {
  return SOURCES.indexOf(source);
}
