import { describe, expect, it } from 'vitest';
import { CHANNELS, createReadings, readSensors, SOURCES, TIMINGS, type Source } from '../../../engine/sensors/index.ts';
import { LONGEST_LATENCY } from '../../../engine/sensors/sensorSpec.ts';
import type { DescentState } from '../../../engine/world/index.ts';
import { evenGround } from '../../support/dropLander.ts';
import {
  kinematicState,
  livelyDescent,
  plainSuite,
  readOver,
  still,
  type KinematicMotion,
} from '../../support/kinematicTruth.ts';

const SEED = 11;

/** The readings when the truth has been the same for a second. */
function after(motion: KinematicMotion, change: Partial<DescentState> = {}) {
  const suite = plainSuite(SEED);
  const readings = createReadings(4);
  for (let tick = 0; tick <= 90; tick++)
    readSensors(suite, { ...kinematicState(tick, motion), ...change }, [], readings);
  return readings;
}

describe('the sensors', () => {
  it.each(SOURCES)('[SE3] report at the stated rate and latency: %s', (source) => {
    const arrivals: number[] = [];
    readOver(livelyDescent(300), { seed: SEED }, (readings, tick) => {
      if (readings[source].arrivedTick === tick) arrivals.push(tick);
    });
    const { period, firstTick, latency } = TIMINGS[source];
    const expected: number[] = [];
    for (let tick = firstTick + latency; tick <= 300; tick += period) expected.push(tick);
    expect(arrivals).toEqual(expected);
    expect(latency).toBeLessThanOrEqual(LONGEST_LATENCY);
    expect(firstTick).toBeLessThan(period);
  });

  it('[SE3] report the truth of the sample, not that of the report', () => {
    // falls a meter a tick, so that a tick of latency would show
    const truth = Array.from({ length: 120 }, (_, tick) => kinematicState(tick, { ...still(300 - tick), vy: -60 }));
    let seen = 0;
    readOver(truth, { seed: SEED }, ({ altimeter }, tick) => {
      if (altimeter.arrivedTick !== tick) return;
      const height = 300 - (tick - TIMINGS.altimeter.latency);
      // 1 % of range and 0.1 m, five deviations
      expect(Math.abs(altimeter.values[0]! - height)).toBeLessThan(5 * (0.1 + 0.01 * height));
      seen++;
    });
    expect(seen).toBe(20);
  });

  it('[SE3] are read for every tick, in order', () => {
    const suite = plainSuite(SEED);
    const readings = createReadings(4);
    readSensors(suite, kinematicState(0, still(50)), [], readings);
    expect(() => {
      readSensors(suite, kinematicState(2, still(50)), [], readings);
    }).toThrow(/every tick/);
  });

  it.each<[Source, string, KinematicMotion, Partial<DescentState>]>([
    ['altimeter', 'leans over 45 degrees', still(50, 0.8), {}],
    ['altimeter', 'is out of reach', still(520), {}],
    ['velocityRadar', 'leans over 25 degrees', still(50, 0.44), {}],
    ['velocityRadar', 'has its feet within 2 m', still(3.9), {}],
    ['attitudeReference', 'turns over 30 degrees a second', { ...still(50), rate: 0.53 }, {}],
    ['surfaceCamera', 'burns within 10 m', still(11.9), {}],
    ['inertialUnit', 'turns faster than it can tell', still(50), {}],
  ])(
    '[SE5] say that there is nothing to measure, and repeat the last: %s when the lander %s',
    (source, _, motion, change) => {
      const suite = plainSuite(SEED);
      const readings = createReadings(4);
      const spun = (tick: number): KinematicMotion => (source === 'inertialUnit' ? still(50, tick) : motion);
      for (let tick = 0; tick <= 60; tick++) readSensors(suite, kinematicState(tick, still(50)), [], readings);
      const good = [...readings[source].values];
      expect(readings[source]).toMatchObject({ isValid: true, hasLock: true });
      let last: readonly number[] = good;
      for (let tick = 61; tick <= 150; tick++) {
        if (readings[source].isValid) last = [...readings[source].values];
        readSensors(suite, { ...kinematicState(tick, spun(tick)), ...change }, [], readings);
      }
      expect(readings[source]).toMatchObject({ isValid: false, hasLock: false, values: last });
    },
  );

  it('[SE5] measure just inside those limits', () => {
    expect(after(still(50, 0.78)).altimeter.isValid).toBe(true);
    expect(after(still(50, 0.43)).velocityRadar.isValid).toBe(true);
    expect(after(still(4.1)).velocityRadar.isValid).toBe(true);
    expect(after({ ...still(50), rate: 0.52 }).attitudeReference.isValid).toBe(true);
    expect(after(still(12.1)).surfaceCamera.isValid).toBe(true);
    expect(after(still(11.9), { thrust: 0 }).surfaceCamera.isValid).toBe(true);
  });

  it('[SE7] touch with a probe, one a leg, when its tip is on the ground', () => {
    // feet 2 m below the center, probes of 0.5 m below them
    expect(after(still(2.51)).contactProbes.values).toEqual([0, 0, 0, 0]);
    expect(after(still(2.49)).contactProbes.values).toEqual([1, 1, 1, 1]);
    // leaning to the left: the legs with odd numbers stand to the left, and lower
    expect(after(still(2.6, 0.2)).contactProbes.values).toEqual([0, 1, 0, 1]);
  });

  it('[SE7] hang their probes along the leaning body, over the ground where the tips are', () => {
    // leaning to the left, the tip of 0.5 m hangs 0.5·sin 0.2 to the right of its foot: on a slope that rises to the right the ground there is higher
    const slope = 0.3;
    const foot = { x: 1.5 * Math.cos(0.2) + 2 * Math.sin(0.2), y: 1.5 * Math.sin(0.2) - 2 * Math.cos(0.2) };
    const tip = { x: foot.x + 0.5 * Math.sin(0.2), y: foot.y - 0.5 * Math.cos(0.2) };
    const touching = tip.x * Math.tan(slope) - tip.y;
    for (const [off, expected] of [
      [0.01, 0],
      [-0.01, 1],
    ] as const) {
      const suite = plainSuite(SEED, evenGround(slope));
      const readings = createReadings(4);
      for (let tick = 0; tick <= 3; tick++)
        readSensors(suite, kinematicState(tick, still(touching + off, 0.2)), [], readings);
      // the legs with even numbers stand to the right
      expect(readings.contactProbes.values[0]).toBe(expected);
    }
  });

  it('[SE1] give a velocity along the axes of the leaning body', () => {
    const velocity = { vx: 4, vy: -6 };
    for (const angle of [-0.4, 0.4]) {
      const { values } = after({ ...still(50, angle), ...velocity }).velocityRadar;
      const across = 4 * Math.cos(angle) - 6 * Math.sin(angle);
      const along = -6 * Math.cos(angle) - 4 * Math.sin(angle);
      // 0.05 m/s and 1 %, five deviations
      expect(Math.abs(values[0]! - across)).toBeLessThan(5 * (0.05 + 0.01 * Math.abs(across)));
      expect(Math.abs(values[1]! - along)).toBeLessThan(5 * (0.05 + 0.01 * Math.abs(along)));
    }
  });

  it('[SE7] show each leg locked', () => {
    expect(after(still(50)).legIndications.values).toEqual([1, 1, 1, 1]);
  });

  it('have a channel for every value', () => {
    const readings = createReadings(16);
    for (const source of SOURCES) expect(readings[source].values.length).toBe(CHANNELS[source].length);
  });
});
