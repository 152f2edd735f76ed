import { describe, expect, it } from 'vitest';
import { estimateView, stepEstimate, type Estimate, type MotionFigures } from '../../../engine/estimate/index.ts';
import { INERTIAL_UNIT } from '../../../engine/sensors/index.ts';
import { STANDARD_GRAVITY } from '../../../engine/constants.ts';
import { MOON } from '../../support/dropLander.ts';
import { HOVER, KNOWN, plainEstimate, readingsOf } from '../../support/plainEstimate.ts';

const SECONDS = 10;
const DEGREE = Math.PI / 180;

/** Ten seconds by the inertial unit alone, which says the same in each tick; returns what is then believed. */
function reckon(estimate: Estimate, unit: readonly number[], seconds = SECONDS) {
  for (let tick = 1; tick <= seconds * 60; tick++) stepEstimate(estimate, readingsOf({ inertialUnit: unit }, tick), {});
  return estimateView(estimate, readingsOf({}, 0), {});
}

function leaning(angle: number): MotionFigures {
  return { ...HOVER, angle };
}

// rows "dead reckoning" of the check table, [Groves2013] from memory: growth of the error of a speed is bias × time, and g·sin(tilt) × time
describe('dead reckoning', () => {
  it('[ES1] 1 mg for 10 s: 0.0981 m/s', () => {
    const { vx, vy, x } = reckon(plainEstimate(), [STANDARD_GRAVITY / 1000, MOON, 0]);
    expect(vx).toBeCloseTo(0.0981, 4);
    expect(vx).toBeCloseTo((STANDARD_GRAVITY / 1000) * SECONDS, 10);
    // and half of that times the time in place
    expect(x).toBeCloseTo((STANDARD_GRAVITY / 1000) * SECONDS * (SECONDS / 2), 9);
    expect(vy).toBeCloseTo(0, 10);
  });

  it('[ES1] 1 degree of tilt in lunar hover for 10 s: 0.2835 m/s', () => {
    // upright in truth, believed to lean to the left: the force that carries seems to push to the left
    const { vx, vy } = reckon(plainEstimate({ start: leaning(DEGREE) }), [0, MOON, 0]);
    expect(-vx).toBeCloseTo(0.2835, 4);
    expect(-vx).toBeCloseTo(MOON * Math.sin(DEGREE) * SECONDS, 10);
    expect(vy).toBeCloseTo(-MOON * (1 - Math.cos(DEGREE)) * SECONDS, 10);
  });

  it('[ES1] falls as gravity says when nothing carries', () => {
    const { vy, height } = reckon(plainEstimate({ start: { ...HOVER, height: 200 } }), [0, 0, 0]);
    expect(vy).toBeCloseTo(-MOON * SECONDS, 10);
    expect(height).toBeCloseTo(200 - (MOON * SECONDS * SECONDS) / 2, 9);
  });

  it('[ES1] turns the force with the body', () => {
    // a slow turn at constant thrust: v = ∫ −f·sin(ω t) dt and ∫ f·cos(ω t) − g dt. The middle rule of a tick is off by the share (ω dt)²/24
    const rate = 0.02;
    const { vx, vy, angle } = reckon(plainEstimate(), [0, 2, rate]);
    const turn = rate * SECONDS;
    expect(angle).toBeCloseTo(turn, 12);
    const off = ((rate / 60) ** 2 / 24) * 2 * SECONDS;
    expect(Math.abs(vx - (-2 / rate) * (1 - Math.cos(turn)))).toBeLessThan(off);
    expect(Math.abs(vy - ((2 / rate) * Math.sin(turn) - MOON * SECONDS))).toBeLessThan(off);
  });
});

describe('without an inertial unit', () => {
  it('[ES1] goes on as it went: v constant, x and height by v times time, no turn', () => {
    const start = { x: 3, height: 80, vx: 1.5, vy: -2, angle: 0.1 };
    const estimate = plainEstimate({ start });
    for (let tick = 1; tick <= SECONDS * 60; tick++) stepEstimate(estimate, readingsOf({}, tick), {});
    const { x, height, vx, vy, angle, rate } = estimateView(estimate, readingsOf({}, 0), {});
    expect({ vx, vy, angle, rate }).toEqual({ vx: start.vx, vy: start.vy, angle: start.angle, rate: 0 });
    expect(x).toBeCloseTo(start.x + start.vx * SECONDS, 9);
    expect(height).toBeCloseTo(start.height + start.vy * SECONDS, 9);
  });
});

describe('what dead reckoning believes of its own error', () => {
  /** Variance that the noise of the unit alone gives a speed [m²/s²]. */
  const noise = (INERTIAL_UNIT.forceSigma / 60) ** 2 * 60 * SECONDS;
  const bias = (INERTIAL_UNIT.forceBias * SECONDS) ** 2;

  it('[ES1] a speed: bias times time, and noise by the root of time', () => {
    const { sigma } = reckon(plainEstimate(), [0, MOON, 0]);
    // the gyroscope turns gravity too: g·ω·t²/2 and below, added in the next test
    const gyro = ((MOON * INERTIAL_UNIT.rateBias * SECONDS * SECONDS) / 2) ** 2;
    expect(sigma.vy / Math.sqrt(bias + noise)).toBeCloseTo(1, 3);
    expect(sigma.vx / Math.sqrt(bias + noise + gyro)).toBeCloseTo(1, 2);
  });

  it('[ES1] a tilt of unknown size: g times tilt times time', () => {
    const startSigma = { ...KNOWN, angle: DEGREE };
    const { sigma } = reckon(plainEstimate({ startSigma }), [0, MOON, 0]);
    expect(sigma.vx / Math.sqrt(bias + noise + (MOON * DEGREE * SECONDS) ** 2)).toBeCloseTo(1, 3);
    expect(sigma.angle).toBeCloseTo(DEGREE, 4);
  });

  it('[ES1] a height: speed times time', () => {
    const startSigma = { ...KNOWN, vy: 0.5 };
    const { sigma } = reckon(plainEstimate({ startSigma }), [0, MOON, 0]);
    expect(sigma.height / (0.5 * SECONDS)).toBeCloseTo(1, 3);
  });

  it('[ES1] without the unit: 1 m/s² for a second in a speed, more with the root of time', () => {
    const estimate = plainEstimate();
    for (let tick = 1; tick <= 60 * SECONDS; tick++) stepEstimate(estimate, readingsOf({}, 0), {});
    expect(estimateView(estimate, readingsOf({}, 0), {}).sigma.vx).toBeCloseTo(Math.sqrt(SECONDS), 6);
  });
});
