import { assert } from '../assert.ts';
import { applyFaults, delayTicks, frozenChannels, isSilent } from '../faults/applyFaults.ts';
import type { Fault } from '../faults/fault.ts';
import { noteUnlocked } from '../faults/legNotLatched.ts';
import type { DescentState } from '../world/descent.ts';
import { measureAltimeter } from './altimeter.ts';
import { measureAttitudeReference } from './attitudeReference.ts';
import { measureContactProbes } from './contactProbes.ts';
import { measureInertialUnit } from './inertialUnit.ts';
import { measureLegIndications } from './legIndications.ts';
import { measurePropellantGauge } from './propellantGauge.ts';
import type { Reading, Readings } from './reading.ts';
import { SOURCES, type Source } from './sources.ts';
import type { SensorLine, SensorScene, SensorSuite } from './suite.ts';
import { measureSurfaceCamera } from './surfaceCamera.ts';
import { TIMINGS } from './timings.ts';
import { measureVelocityRadar } from './velocityRadar.ts';

type Measure = (scene: SensorScene, truth: DescentState, into: number[]) => boolean;

const MEASURES: Readonly<Record<Source, Measure>> = {
  inertialUnit: measureInertialUnit,
  altimeter: measureAltimeter,
  velocityRadar: measureVelocityRadar,
  attitudeReference: measureAttitudeReference,
  surfaceCamera: measureSurfaceCamera,
  propellantGauge: measurePropellantGauge,
  contactProbes: measureContactProbes,
  legIndications: measureLegIndications,
};

/** In the order of SOURCES. */
const SENSORS = SOURCES.map((source) => ({ source, timing: TIMINGS[source], measure: MEASURES[source] }));

/**
 * One tick of all sensors: those whose turn it is take a sample of the truth, and what reports in this tick is put into `into`, as the faults
 * leave it. To be called for every tick, in order, from tick 0 on, whether anybody looks or not.
 */
export function readSensors(suite: SensorSuite, truth: DescentState, faults: readonly Fault[], into: Readings): void {
  const { scene, lines } = suite;
  const { tick } = truth;
  const isNext = tick === scene.before.tick + 1;
  if (!isNext) assert(false, `sensors read every tick: after ${scene.before.tick} comes the next, came ${tick}`);
  noteUnlocked(faults, tick, scene.unlocked);
  for (let index = 0; index < SENSORS.length; index++) {
    const { source, timing, measure } = SENSORS[index]!;
    const { period, firstTick, latency } = timing;
    const line = lines[index]!;
    const sampled = tick - firstTick;
    if (sampled >= 0 && sampled % period === 0) takeSample(line, sampled / period, measure(scene, truth, line.sample));
    const due = sampled - latency;
    if (due < 0 || due % period !== 0 || isSilent(faults, source, tick)) continue;
    const number = Math.floor((due - delayTicks(faults, source, tick)) / period);
    if (number >= 0) deliver({ line, number, source, tick, key: scene.key, faults }, into[source]);
  }
  scene.before.tick = tick;
  scene.before.vx = truth.vx;
  scene.before.vy = truth.vy;
  scene.before.angle = truth.angle;
}

/** Remembers the sample with this number, counted from 0. */
function takeSample(line: SensorLine, number: number, hasLock: boolean): void {
  const slot = number % line.slots;
  for (let channel = 0; channel < line.count; channel++)
    line.samples[slot * line.count + channel] = line.sample[channel]!;
  line.areLocked[slot] = hasLock;
}

interface Delivery {
  readonly line: SensorLine;
  /** Which sample is reported. */
  readonly number: number;
  readonly source: Source;
  readonly tick: number;
  readonly key: number;
  readonly faults: readonly Fault[];
}

function deliver({ line, number, source, tick, key, faults }: Delivery, reading: Reading): void {
  const slot = number % line.slots;
  const frozen = frozenChannels(faults, source, tick);
  if (frozen === 0) line.isHeldLocked = line.areLocked[slot]!;
  for (let channel = 0; channel < line.count; channel++) {
    if ((frozen & (1 << channel)) === 0) line.held[channel] = line.samples[slot * line.count + channel]!;
    reading.values[channel] = line.held[channel]!;
  }
  reading.arrivedTick = tick;
  reading.hasLock = line.isHeldLocked;
  reading.isValid = line.isHeldLocked;
  applyFaults(faults, { source, tick, key }, reading);
}
