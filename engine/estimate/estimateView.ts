import { groundHeight } from '../ground/terrain.ts';
import { atan } from '../math/trig.ts';
import { forEachSource, type Readings } from '../sensors/reading.ts';
import type { Source } from '../sensors/sources.ts';
import { TIMINGS } from '../sensors/timings.ts';
import { TICK_DT } from '../world/constants.ts';
import { clearanceOf } from './clearance.ts';
import type { Estimate } from './estimate.ts';
import { mapRise } from './mapGround.ts';
import { ageTicks, checkSource, type Judgment, type Judgments, type SourceState } from './sourceTrack.ts';
import { ANGLE, HEIGHT, STATES, VX, VY, X } from './state.ts';

/** What is believed, in figures. Section frame; new at each call, plain data. */
export interface EstimateView {
  readonly tick: number;
  /** Of the center of mass [m]: y on the map, to be drawn over the map's ground. */
  readonly x: number;
  readonly y: number;
  /** Of the center of mass above the ground straight below it [m]. */
  readonly height: number;
  /** Of the lowest foot above the map's ground straight below it [m]. */
  readonly clearance: number;
  /** [m/s] */
  readonly vx: number;
  readonly vy: number;
  /** [rad], [rad/s] */
  readonly angle: number;
  readonly rate: number;
  /** Slope of the map below, + where it rises to the right [rad]. */
  readonly slope: number;
  /** Standard deviations of the above [m], [m/s], [rad]. */
  readonly sigma: {
    readonly x: number;
    readonly height: number;
    readonly vx: number;
    readonly vy: number;
    readonly angle: number;
  };
  /** Covariance of vx and angle [m/s·rad]: what arrivalOdds asks for. */
  readonly driftWithAngle: number;
  readonly sources: Readonly<Record<Source, SourceView>>;
}

interface SourceView {
  readonly state: SourceState;
  readonly judgment: Judgment;
  /** Since the sample was taken, as far as the sensor tells; undefined before the first report [s]. */
  readonly age: number | undefined;
  /** Since the sample that was last taken into the estimate; undefined before one was [s]. */
  readonly usedAge: number | undefined;
  /** Its last report was taken into the estimate. */
  readonly isUsed: boolean;
  /** Last report less what was expected over its standard deviation, one a channel [-]; empty for sources that are not weighed. */
  readonly disagreement: readonly number[];
}

export function estimateView(estimate: Estimate, readings: Readings, judgments: Judgments): EstimateView {
  const { mean, covariance, setup, tick } = estimate;
  const x = mean[X]!;
  const height = mean[HEIGHT]!;
  const motion = { x, y: groundHeight(setup.map.terrain, x) + height, angle: mean[ANGLE]! };
  const sigma = (state: number): number => Math.sqrt(covariance[state * STATES + state]!);
  return {
    tick,
    ...motion,
    height,
    clearance: clearanceOf(setup.feet, setup.map, motion),
    vx: mean[VX]!,
    vy: mean[VY]!,
    rate: estimate.rate,
    slope: atan(mapRise(setup.map, x)),
    sigma: { x: sigma(X), height: sigma(HEIGHT), vx: sigma(VX), vy: sigma(VY), angle: sigma(ANGLE) },
    driftWithAngle: covariance[VX * STATES + ANGLE]!,
    sources: forEachSource((source) => viewSource(estimate, readings, judgments, source)),
  };
}

function viewSource({ tracks, tick }: Estimate, readings: Readings, judgments: Judgments, source: Source): SourceView {
  const { isUsed, usedTick, innovation, deviation } = tracks[source];
  const reading = readings[source];
  return {
    state: checkSource(source, reading, tracks[source], tick),
    judgment: judgments[source] ?? 'accepted',
    age: reading.arrivedTick < 0 ? undefined : ageTicks(source, reading, tick) * TICK_DT,
    usedAge: usedTick < 0 ? undefined : (tick - usedTick + TIMINGS[source].latency) * TICK_DT,
    isUsed,
    disagreement: innovation.flatMap((value, channel) => {
      const sigma = deviation[channel]!;
      return sigma === 0 ? [] : [value / sigma];
    }),
  };
}
