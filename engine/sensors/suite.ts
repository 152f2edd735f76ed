import { assert } from '../assert.ts';
import { LONGEST_DELAY_TICKS } from '../faults/delay.ts';
import type { Terrain } from '../ground/terrain.ts';
import { inertialBiases } from './inertialUnit.ts';
import { noiseKey } from './noise.ts';
import { gaugeError } from './propellantGauge.ts';
import type { SensorError } from './sensorSpec.ts';
import { channelCount, SOURCES, type Source } from './sources.ts';
import { TIMINGS } from './timings.ts';

interface SuiteSetup {
  /** Decides all noise and all biases: a whole number from 0. */
  readonly seed: number;
  /** [m/s²] */
  readonly gravity: number;
  /** The true ground. */
  readonly terrain: Terrain;
  /** How many legs the lander has. */
  readonly legs: number;
  /** [m] */
  readonly probeLength: number;
  /** Usable propellant at the start [kg]. */
  readonly propellant: number;
}

/** What the sensors measure in, besides the truth of the tick. */
export interface SensorScene {
  /** Of the seed, see noise.ts. */
  readonly key: number;
  readonly gravity: number;
  readonly terrain: Terrain;
  readonly probeLength: number;
  readonly gauge: SensorError;
  /** Biases of the inertial unit: across, along [m/s²], rate [rad/s]. */
  readonly biases: readonly number[];
  /** The truth one tick ago; tick is -1 before there was one. */
  readonly before: { tick: number; vx: number; vy: number; angle: number };
  /** Which legs are not locked in truth. */
  readonly unlocked: boolean[];
}

/** Samples of one source on their way, and what a frozen one repeats. */
export interface SensorLine {
  /** The last samples, `count` values each, in a ring by the number of the sample. */
  readonly samples: number[];
  /** Which of them were measured. */
  readonly areLocked: boolean[];
  readonly slots: number;
  readonly count: number;
  /** The latest sample; a sensor that cannot measure repeats it. */
  readonly sample: number[];
  /** The latest report as it was before any fault but freezing. */
  readonly held: number[];
  isHeldLocked: boolean;
}

/** All sensors of one lander: plain data, changed in place by readSensors. */
export interface SensorSuite {
  readonly scene: SensorScene;
  /** In the order of SOURCES. */
  readonly lines: readonly SensorLine[];
}

/** Sensors that have measured nothing yet. */
export function createSuite({ seed, gravity, terrain, legs, probeLength, propellant }: SuiteSetup): SensorSuite {
  assert(Number.isSafeInteger(seed) && seed >= 0, `a seed of sensors is a whole number from 0, came ${seed}`);
  return {
    scene: {
      key: noiseKey(seed),
      gravity,
      terrain,
      probeLength,
      gauge: gaugeError(propellant),
      biases: inertialBiases(seed),
      before: { tick: -1, vx: 0, vy: 0, angle: 0 },
      unlocked: Array.from({ length: legs }, () => false),
    },
    lines: SOURCES.map((source) => createLine(source, legs)),
  };
}

/** Remembers as many samples as the longest delay can ask for. */
function createLine(source: Source, legs: number): SensorLine {
  const { period, latency } = TIMINGS[source];
  const slots = Math.ceil((latency + LONGEST_DELAY_TICKS) / period) + 2;
  const count = channelCount(source, legs);
  return {
    samples: zeros(slots * count),
    areLocked: Array.from({ length: slots }, () => false),
    slots,
    count,
    sample: zeros(count),
    held: zeros(count),
    isHeldLocked: false,
  };
}

function zeros(length: number): number[] {
  return Array.from({ length }, () => 0);
}
