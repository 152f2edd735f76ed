import { describe, expect, it } from 'vitest';
import {
  peakAfterImpact,
  quarterPeriod,
  rockingModel,
  slenderOverturningPulse,
  slenderQuarterPeriod,
} from '../../../engine/pivot/rocking.ts';
import { rock, rockingEnergy } from '../../../engine/pivot/rockingMotion.ts';
import { ROCKING_REST_SHARE } from '../../../engine/tolerances.ts';
import type { PivotBody } from '../../../engine/pivot/tripLimit.ts';

const G = 1.62;
const BODY: PivotBody = { mass: 2, halfStance: 0.6, centerHeight: 1, inertia: 0.8 };
const LOPSIDED: PivotBody = { ...BODY, oppositeHalfStance: 0.25 };
const span = { duration: 60, step: 0.02 };

describe('the rocking model', () => {
  it('[RO7] balances where the center of mass is over the edge, each side for itself', () => {
    const { toward, away } = rockingModel(LOPSIDED, { gravity: G });
    expect(toward.balance).toBeCloseTo(Math.atan(0.6), 15);
    expect(away.balance).toBeCloseTo(Math.atan(0.25), 15);
    expect(toward.inertia).toBeCloseTo(0.8 + 2 * 1.36, 14);
    expect(toward.frequency).toBeCloseTo(Math.sqrt((2 * G * Math.sqrt(1.36)) / 3.52), 14);
  });

  it('[RO7] on a slope takes as much from the balance tilt downhill as it gives uphill', () => {
    const { toward, away } = rockingModel(BODY, { gravity: G, slope: 0.1 });
    expect(toward.balance).toBeCloseTo(Math.atan(0.6) - 0.1, 15);
    expect(away.balance).toBeCloseTo(Math.atan(0.6) + 0.1, 15);
  });

  it('[RO7] feels a steady ground acceleration as steeper, stronger gravity', () => {
    const pushed = rockingModel(BODY, { gravity: 3, groundAcceleration: 4 });
    const leaning = rockingModel(BODY, { gravity: 5, slope: Math.atan2(4, 3) });
    expect(pushed.toward.balance).toBeCloseTo(leaning.toward.balance, 15);
    expect(pushed.away.frequency).toBeCloseTo(leaning.away.frequency, 15);
    // a body lifts when the acceleration exceeds g b/h
    const balanceAt = (share: number): number =>
      rockingModel(BODY, { gravity: G, groundAcceleration: share * G * 0.6 }).toward.balance;
    expect(balanceAt(1 - 1e-9)).toBeGreaterThan(0);
    expect(balanceAt(1 + 1e-9)).toBeLessThan(0);
  });

  it('[RO2] keeps angular momentum about the struck edge, also between unequal edges', () => {
    const { toward, away } = rockingModel(LOPSIDED, { gravity: G });
    for (const [next, near, far] of [
      [toward, 0.6, 0.25],
      [away, 0.25, 0.6],
    ] as const) {
      // center at (far, 1) from the old edge, turning at rate 1: velocity (−1, far); it stands at (−near, 1) from the new one
      const before = 0.8 + 2 * (-near * far - 1 * -1);
      expect(next.carryOver * next.inertia).toBeCloseTo(before, 13);
    }
  });

  it.each([
    ['mass', { ...BODY, mass: 0 }, { gravity: G }, /mass and center height are above 0/],
    ['center height', { ...BODY, centerHeight: 0 }, { gravity: G }, /mass and center height are above 0/],
    ['inertia', { ...BODY, inertia: -1e-9 }, { gravity: G }, /inertia is 0 or more/],
    ['half stance', { ...BODY, halfStance: 0 }, { gravity: G }, /half stances are above 0/],
    ['half stance on the other side', { ...BODY, oppositeHalfStance: 0 }, { gravity: G }, /half stances are above 0/],
    ['gravity of nothing', BODY, { gravity: 0 }, /gravity is above 0/],
    ['upright slope', BODY, { gravity: G, slope: -Math.PI / 2 }, /slope between -90 and 90/],
    ['gravity', BODY, { gravity: NaN }, /gravity is above 0/],
    ['slope', BODY, { gravity: G, slope: 2 }, /slope between -90 and 90/],
  ])('[RO7] refuses a wrong %s', (_name, body, condition, message) => {
    expect(() => rockingModel(body, condition)).toThrow(message);
  });
});

describe('closed forms', () => {
  const { toward, away } = rockingModel(BODY, { gravity: G });

  it('[RO1] agree for small tilts of a slender body and take for ever to leave the balance', () => {
    const slender = { ...toward, balance: 1e-4 };
    const ratio = quarterPeriod(slender, 3e-5) / slenderQuarterPeriod(slender, 3e-5);
    expect(Math.abs(ratio - 1)).toBeLessThan(1e-8);
    // near the balance each factor of 10 adds ln 10 / p
    const near = [1e-6, 1e-7].map((gap) => quarterPeriod(toward, toward.balance * (1 - gap)));
    expect(((near[1] ?? 0) - (near[0] ?? 0)) * toward.frequency).toBeCloseTo(Math.log(10), 5);
  });

  it('[RO1] of a tiny tilt are those of free fall: √(2 θ / (p² sin α))', () => {
    const tilt = 1e-9;
    const fall = Math.sqrt((2 * tilt) / (toward.frequency ** 2 * Math.sin(toward.balance)));
    expect(Math.abs(quarterPeriod(toward, tilt) / fall - 1)).toBeLessThan(1e-8);
    expect(
      Math.abs(slenderQuarterPeriod({ ...toward, balance: 1 }, tilt) * toward.frequency - Math.sqrt(2e-9)),
    ).toBeLessThan(1e-12);
  });

  it('[RO3] say when the body stops, and when it falls over the other edge', () => {
    const squat = rockingModel({ mass: 1, halfStance: 2, centerHeight: 1, inertia: 0.5 }, { gravity: G });
    expect(squat.away.carryOver).toBeLessThan(0);
    expect(peakAfterImpact(squat.toward, 0.1, squat.away)).toEqual({ kind: 'stops' });
    const uneven = rockingModel(LOPSIDED, { gravity: G });
    const high = 0.99 * uneven.toward.balance;
    expect(peakAfterImpact(uneven.toward, high, uneven.away)).toEqual({ kind: 'fallsOver' });
    expect(peakAfterImpact(uneven.away, 0.2, uneven.toward)).toMatchObject({ kind: 'peak' });
    expect(() => peakAfterImpact(toward, toward.balance, away)).toThrow(/between flat and balance/);
  });
});

describe('rocking through time', () => {
  const model = rockingModel(BODY, { gravity: G });

  it('[RO8] comes to rest after ever smaller impacts, peaks and impacts taking turns', () => {
    const run = rock(model, { tilt: -0.9 * model.away.balance, rate: 0 }, span);
    expect(run.outcome).toBe('at rest');
    expect(run.state).toEqual({ tilt: 0, rate: 0 });
    expect(run.events.length).toBeGreaterThan(10);
    expect(run.events.map(({ kind }) => kind)).toEqual(run.events.map((_, i) => (i % 2 === 0 ? 'impact' : 'peak')));
    const peaks = run.events.filter(({ kind }) => kind === 'peak').map(({ state }) => state.tilt);
    expect(peaks[0]).toBeGreaterThan(0);
    for (const [i, peak] of peaks.slice(1).entries()) {
      expect(Math.sign(peak)).toBe(-Math.sign(peaks[i] ?? NaN));
      expect(Math.abs(peak)).toBeLessThan(Math.abs(peaks[i] ?? NaN));
    }
  });

  it.each([0.01, 1.62, 100])(
    '[RO8] stops at the first impact that leaves too little, on a world of %d m/s²',
    (gravity) => {
      const rocker = rockingModel(BODY, { gravity });
      const { away } = rocker;
      const scale = away.frequency;
      const run = rock(rocker, { tilt: 0.3 * away.balance, rate: 0 }, { duration: 200 / scale, step: 0.02 / scale });
      expect(run.outcome).toBe('at rest');
      const left = run.events
        .filter(({ kind }) => kind === 'impact')
        .map(({ state }) => (away.carryOver * Math.abs(state.rate)) / (away.balance * scale));
      expect(left.length).toBeGreaterThan(5);
      expect(left.at(-1)).toBeLessThan(ROCKING_REST_SHARE);
      expect(Math.min(...left.slice(0, -1))).toBeGreaterThanOrEqual(ROCKING_REST_SHARE);
    },
  );

  it('[RO8] ends when the body is past an edge and still going, and names the side', () => {
    const beyond = { tilt: 1.001 * model.toward.balance, rate: 0 };
    expect(rock(model, beyond, span).outcome).toBe('fell toward');
    expect(rock(model, { tilt: -beyond.tilt, rate: 0 }, span).outcome).toBe('fell away');
    expect(rock(model, { tilt: 0, rate: 5 }, span)).toMatchObject({ outcome: 'fell toward', events: [] });
  });

  it('[RO8] rests where it stands, and starts to fall where it cannot stand', () => {
    expect(rock(model, { tilt: 0, rate: 0 }, span)).toMatchObject({ outcome: 'at rest', time: 0, events: [] });
    const steep = rockingModel(BODY, { gravity: G, slope: 0.6 });
    expect(steep.toward.balance).toBeLessThan(0);
    expect(rock(steep, { tilt: 0, rate: 0 }, span).outcome).toBe('fell toward');
    const other = rockingModel(BODY, { gravity: G, slope: -0.6 });
    expect(rock(other, { tilt: 0, rate: 0 }, span).outcome).toBe('fell away');
  });

  it('[RO8] can fall over the near edge after an impact on it', () => {
    const uneven = rockingModel(LOPSIDED, { gravity: G });
    const run = rock(uneven, { tilt: 0.99 * uneven.toward.balance, rate: 0 }, span);
    expect(run.outcome).toBe('fell away');
    expect(run.events.map(({ kind }) => kind)).toEqual(['impact']);
  });

  it('[RO8] stops a squat body at its first impact', () => {
    const squat = rockingModel({ mass: 1, halfStance: 2, centerHeight: 1, inertia: 0.5 }, { gravity: G });
    const run = rock(squat, { tilt: 0.2, rate: 0 }, span);
    expect(run.outcome).toBe('at rest');
    expect(run.events.length).toBe(1);
  });

  it('[RO8] ends on time when it is still rocking, on whole steps or not', () => {
    const run = rock(model, { tilt: 0.5 * model.toward.balance, rate: 0 }, { duration: 0.73, step: 0.1 });
    expect(run).toMatchObject({ outcome: 'still rocking', time: 0.73 });
    expect(rockingEnergy(model, run.state)).toBeGreaterThan(0);
  });

  it('[RO8] in no time goes nowhere', () => {
    const start = { tilt: 0.1, rate: 0.2 };
    expect(rock(model, start, { duration: 0, step: 0.02 })).toEqual({
      outcome: 'still rocking',
      time: 0,
      state: start,
      events: [],
    });
  });

  it('[RO8] refuses a start on its head, or at no rate', () => {
    for (const tilt of [Math.PI, -Math.PI, Number.NaN])
      expect(() => rock(model, { tilt, rate: 0 }, span)).toThrow(/below 180 degrees/);
    for (const rate of [Infinity, Number.NaN]) expect(() => rock(model, { tilt: 0, rate }, span)).toThrow(/a rate/);
  });

  it.each([
    { duration: 1, step: 0 },
    { duration: -1, step: 0.1 },
    { duration: NaN, step: 0.1 },
  ])('[RO8] refuses the span %o', (wrong) => {
    expect(() => rock(model, { tilt: 0, rate: 1 }, wrong)).toThrow(/a step is above 0/);
  });
});

describe('a push', () => {
  it('[RO4] that does not lift the body has no duration that overturns it', () => {
    for (const share of [1, 0.5, 0, -1, Number.NaN])
      expect(() => slenderOverturningPulse(share)).toThrow(/a push that lifts the body is above 1/);
    // and barely above it must last ever longer
    expect(slenderOverturningPulse(1 + 1e-9)).toBeGreaterThan(20);
  });
});
