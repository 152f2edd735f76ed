import { describe, expect, it } from 'vitest';
import { INERTIAL_UNIT, SOURCES, type Readings, type Source } from '../../../engine/sensors/index.ts';
import { addressedDeviate, noiseKey } from '../../../engine/sensors/noise.ts';
import type { DescentState } from '../../../engine/world/index.ts';
import { inertialBiases } from '../../../engine/sensors/inertialUnit.ts';
import { meanSquareBounds } from '../../support/chiSquare.ts';
import { MOON } from '../../support/dropLander.ts';
import { kinematicState, livelyDescent, readOver, type KinematicMotion } from '../../support/kinematicTruth.ts';

const TICKS = 60_000;

/** Steady flight, so that every sample has the same truth. */
const STEADY: KinematicMotion = { x: 0, y: 100, vx: 3, vy: -1, angle: 0, rate: 0 };

/** Every valid report over steady flight. */
const REPORTS = collect();

function collect(): Readonly<Record<Source, readonly (readonly number[])[]>> {
  const found = Object.fromEntries(SOURCES.map((source) => [source, [] as number[][]])) as Record<Source, number[][]>;
  const states = Array.from({ length: TICKS }, (_, tick) => kinematicState(tick, STEADY));
  readOver(states, { seed: 4 }, (readings, tick) => {
    for (const source of SOURCES) {
      const { arrivedTick, isValid, values } = readings[source];
      if (arrivedTick === tick && isValid) found[source].push([...values]);
    }
  });
  return found;
}

/** Errors of one channel over steady flight, over the deviation that its data state. */
function errors(source: Source, channel: number, truth: number, sigma: number): readonly number[] {
  return REPORTS[source].map((values) => (values[channel]! - truth) / sigma);
}

// truths of steady flight by hand: no acceleration, so the specific force is gravity's, up
it.each([
  ['altimeter', 0, 100, Math.hypot(0.1 + 0.01 * 100, 0.01 / Math.sqrt(12))],
  ['velocityRadar', 0, 3, Math.hypot(0.05 + 0.03, 0.01 / Math.sqrt(12))],
  ['velocityRadar', 1, -1, Math.hypot(0.05 + 0.01, 0.01 / Math.sqrt(12))],
  ['attitudeReference', 0, 0, Math.hypot(0.1, 0.01 / Math.sqrt(12)) * (Math.PI / 180)],
  ['surfaceCamera', 0, 3, Math.hypot(0.2 + 0.3, 0.5 / Math.sqrt(12))],
  ['propellantGauge', 0, 100, Math.hypot(1, 0.5 / Math.sqrt(12))],
] as const)('[SE1] %s, channel %d: unbiased, of the stated variance, and white', (source, channel, truth, sigma) => {
  const found = errors(source, channel, truth, sigma);
  const mean = found.reduce((sum, e) => sum + e, 0) / found.length;
  const square = found.reduce((sum, e) => sum + e * e, 0) / found.length;
  const [low, high] = meanSquareBounds(found.length);
  expect(found.length).toBeGreaterThan(900);
  expect(Math.abs(mean)).toBeLessThan(3.3 / Math.sqrt(found.length));
  expect(square).toBeGreaterThan(low);
  expect(square).toBeLessThan(high);
  let product = 0;
  for (let i = 1; i < found.length; i++) product += found[i]! * found[i - 1]!;
  expect(Math.abs(product / found.length)).toBeLessThan(3.3 / Math.sqrt(found.length));
});

describe('the inertial unit', () => {
  it.each([
    [0, 0, INERTIAL_UNIT.forceSigma],
    [1, MOON, INERTIAL_UNIT.forceSigma],
    [2, 0, INERTIAL_UNIT.rateSigma],
  ] as const)(
    '[SE6] channel %d: a constant bias, and white noise of the stated variance about it',
    (channel, truth, sigma) => {
      const bias = inertialBiases(4)[channel]!;
      const found = errors('inertialUnit', channel, truth + bias, sigma);
      const square = found.reduce((sum, e) => sum + e * e, 0) / found.length;
      const [low, high] = meanSquareBounds(found.length);
      expect(square).toBeGreaterThan(low);
      expect(square).toBeLessThan(high);
    },
  );

  it('[SE6] has biases of the stated deviations over many descents', () => {
    const { forceBias, rateBias } = INERTIAL_UNIT;
    const seeds = 2000;
    const [low, high] = meanSquareBounds(seeds);
    for (const [axis, sigma] of [forceBias, forceBias, rateBias].entries()) {
      let sum = 0;
      for (let seed = 0; seed < seeds; seed++) sum += (inertialBiases(seed)[axis]! / sigma) ** 2;
      expect(sum / seeds).toBeGreaterThan(low);
      expect(sum / seeds).toBeLessThan(high);
    }
  });

  // random walk of an angle or speed: the noise of a tick times its length, over √time. 0.03 m/s/√h and 0.05 deg/√h are what the data state
  it('[SE6] walks by 0.03 m/s and 0.05 degrees in the root of an hour', () => {
    const ticksAnHour = 3600 * 60;
    expect((INERTIAL_UNIT.forceSigma / 60) * Math.sqrt(ticksAnHour)).toBeCloseTo(0.03, 12);
    expect((INERTIAL_UNIT.rateSigma / 60) * Math.sqrt(ticksAnHour)).toBeCloseTo((0.05 * Math.PI) / 180, 12);
  });
});

/** What the inertial unit says over a lively descent, less its biases and less the noise that its data and its address state. */
function cleanForces(truth: readonly DescentState[]): readonly (readonly number[])[] {
  const { forceSigma, rateSigma } = INERTIAL_UNIT;
  const biases = inertialBiases(4);
  const clean: number[][] = [];
  readOver(truth, { seed: 4 }, ({ inertialUnit }, tick) => {
    const noise = [forceSigma, forceSigma, rateSigma].map(
      (sigma, c) => sigma * addressedDeviate(noiseKey(4), 0, tick, c),
    );
    clean.push(inertialUnit.values.map((value, c) => value - biases[c]! - noise[c]!));
  });
  return clean;
}

it('[SE6] gives back the motion when it is summed up without bias and noise', () => {
  const truth = livelyDescent(900);
  let { angle, vx, vy } = truth[0]!;
  for (const [across, along, rate] of cleanForces(truth).slice(1) as [number, number, number][]) {
    // turned by the attitude in the middle of the tick, less gravity
    const middle = angle + rate / 120;
    vx += (across * Math.cos(middle) - along * Math.sin(middle)) / 60;
    vy += (across * Math.sin(middle) + along * Math.cos(middle) - MOON) / 60;
    angle += rate / 60;
  }
  const last = truth.at(-1)!;
  expect(Math.abs(last.vx - truth[0]!.vx)).toBeGreaterThan(1);
  expect(angle).toBeCloseTo(last.angle, 10);
  expect(vx).toBeCloseTo(last.vx, 10);
  expect(vy).toBeCloseTo(last.vy, 10);
});

/** Every reading of every tick as one line. */
function lines(seed: number, sources: readonly Source[], faults: Parameters<typeof readOver>[1]['faults'] = []) {
  const found: string[] = [];
  readOver(livelyDescent(600), { seed, faults }, (readings: Readings) => {
    found.push(JSON.stringify(sources.map((source) => readings[source])));
  });
  return found;
}

describe('what a sensor says', () => {
  it('[SE2] is the same whatever goes wrong with the others', () => {
    const others = SOURCES.filter((source) => source !== 'altimeter');
    const faults = [{ source: 'altimeter', kind: 'noise', parameters: { sigma: 3 }, fromTick: 100 }] as const;
    expect(lines(9, others, faults)).toEqual(lines(9, others));
    expect(lines(9, ['altimeter'], faults)).not.toEqual(lines(9, ['altimeter']));
  });

  it('[SE2] is another for another seed', () => {
    for (const source of ['inertialUnit', 'altimeter', 'velocityRadar', 'attitudeReference'] as const)
      expect(lines(9, [source])).not.toEqual(lines(10, [source]));
  });
});
