import { describe, expect, it } from 'vitest';
import {
  peakAfterImpact,
  quarterPeriod,
  rockingModel,
  slenderOverturningPulse,
  slenderPeakShare,
  slenderQuarterPeriod,
  type RockingSide,
} from '../../../engine/pivot/rocking.ts';
import { rock } from '../../../engine/pivot/rockingMotion.ts';
import type { PivotBody } from '../../../engine/pivot/tripLimit.ts';

/**
 * Rocking of rigid blocks against [Housner1963] (formulas from memory, figures worked apart from this engine).
 *
 * One tolerance a quantity: `figure` is half a unit in the last printed place; `simulated` is what the stepped motion
 * may differ from the closed form. Achieved: every printed figure; stepped quarter period 7e-11 s, decay 3e-12 of the
 * balance tilt, pulse 6e-7 (the slender formula against a body of balance tilt 0.001 rad, which is what limits it).
 */
const TOLERANCE = {
  quarterPeriod: { figure: 0.5e-5, simulated: 2e-10 },
  restitution: { figure: 0.5e-6, simulated: 1e-12 },
  peakShare: { figure: 0.5e-4, simulated: 1e-11 },
  pulse: { figure: 0.5e-6, simulated: 1e-6 },
} as const;

const G = 9.81;

/** A solid rectangle, half width b and half height h. */
function rectangle(b: number, h: number): PivotBody {
  return { mass: 1, halfStance: b, centerHeight: h, inertia: (b * b + h * h) / 3 };
}

describe('quarter period, b 0.2 m, h 1 m, I_P = 2 m L², g 9.81 m/s², start at half the balance tilt [Housner1963]', () => {
  const { toward, away } = rockingModel(
    { mass: 1, halfStance: 0.2, centerHeight: 1, inertia: 0.2 * 0.2 + 1 },
    { gravity: G },
  );
  const start = toward.balance / 2;

  it('[RO1] is 0.60050 s for a slender body', () => {
    expect(Math.abs(slenderQuarterPeriod(toward, start) - 0.6005)).toBeLessThan(TOLERANCE.quarterPeriod.figure);
  });

  it('[RO1] is 0.60118 s exactly', () => {
    expect(Math.abs(quarterPeriod(toward, start) - 0.60118)).toBeLessThan(TOLERANCE.quarterPeriod.figure);
  });

  it('[RO1] is what the stepped motion takes to its first impact', () => {
    const { events } = rock({ toward, away }, { tilt: start, rate: 0 }, { duration: 1, step: 0.005 });
    expect(events[0]?.kind).toBe('impact');
    const error = (events[0]?.time ?? NaN) - quarterPeriod(toward, start);
    expect(Math.abs(error)).toBeLessThan(TOLERANCE.quarterPeriod.simulated);
  });
});

describe('restitution of the impact [Housner1963]', () => {
  it.each([
    [0.25, 1, 0.911765],
    [1, 2, 0.7],
  ])('[RO2] of a rectangle b %d m, h %d m is %d', (b, h, expected) => {
    const { toward, away } = rockingModel(rectangle(b, h), { gravity: G });
    expect(Math.abs(toward.carryOver - expected)).toBeLessThan(TOLERANCE.restitution.figure);
    expect(away.carryOver).toBe(toward.carryOver);
    // 1 − 1.5 sin² α, the form for rectangles
    const sine = b / Math.sqrt(b * b + h * h);
    expect(Math.abs(toward.carryOver - (1 - 1.5 * sine * sine))).toBeLessThan(TOLERANCE.restitution.simulated);
  });

  it('[RO2] is the ratio of rates across an impact of the stepped motion', () => {
    const { toward, away } = rockingModel(rectangle(0.25, 1), { gravity: G });
    const span = { duration: 4, step: 0.002 };
    const { events } = rock({ toward, away }, { tilt: 0.8 * toward.balance, rate: 0 }, span);
    const impacts = events.filter(({ kind }) => kind === 'impact');
    expect(impacts.length).toBeGreaterThan(3);
    // energy between impacts carries the rate after one unchanged to the next
    const ratio = -(impacts[1]?.state.rate ?? NaN) / (impacts[0]?.state.rate ?? NaN);
    expect(Math.abs(ratio - 0.911765)).toBeLessThan(TOLERANCE.restitution.figure);
  });
});

describe('rocking decay, e 0.911765, start at 0.8 of the balance tilt [Housner1963, from memory]', () => {
  const published = [0.5506, 0.4199, 0.3303, 0.2641];

  it('[RO3] of a slender body follows the published formula', () => {
    const { carryOver } = rockingModel(rectangle(0.25, 1), { gravity: G }).toward;
    for (const [i, expected] of published.entries()) {
      const share = slenderPeakShare(0.8, carryOver, i + 1);
      expect(Math.abs(share - expected)).toBeLessThan(TOLERANCE.peakShare.figure);
    }
  });

  it('[RO3] is asked for a start between flat and balance, and for impacts that leave something', () => {
    for (const start of [0, 1, -0.1, Number.NaN]) expect(() => slenderPeakShare(start, 0.9, 1)).toThrow(/between flat/);
    expect(() => slenderPeakShare(0.5, 0, 1)).toThrow(/rocking goes on/);
  });

  /** Peaks over balance tilt: exact, and of the stepped motion, for a body of a given balance tilt and restitution. */
  function peakShares(body: PivotBody): { readonly exact: number[]; readonly stepped: number[] } {
    const model = rockingModel(body, { gravity: G });
    const { balance } = model.toward;
    const exact: number[] = [];
    let tilt = 0.8 * balance;
    for (let n = 0; n < published.length; n++) {
      const [from, to] = n % 2 === 0 ? [model.toward, model.away] : [model.away, model.toward];
      const next = peakAfterImpact(from, tilt, to);
      if (next.kind !== 'peak') throw new Error(`no peak: ${next.kind}`);
      tilt = next.tilt;
      exact.push(tilt / balance);
    }
    const run = rock(model, { tilt: 0.8 * balance, rate: 0 }, { duration: 8, step: 0.004 });
    const peaks = run.events.filter(({ kind }) => kind === 'peak').slice(0, published.length);
    return { exact, stepped: peaks.map(({ state }) => Math.abs(state.tilt) / balance) };
  }

  it('[RO3] of the stepped motion is that of the exact closed form', () => {
    const { exact, stepped } = peakShares(rectangle(0.25, 1));
    expect(stepped.length).toBe(4);
    for (const [i, share] of stepped.entries())
      expect(Math.abs(share - (exact[i] ?? NaN))).toBeLessThan(TOLERANCE.peakShare.simulated);
  });

  it('[RO3] exact comes down to the published one with the square of the balance tilt', () => {
    const differences = [0.2, 0.02, 0.002].map((balance) => {
      const side: RockingSide = { balance, frequency: 1, inertia: 1, carryOver: 0.9117647058823529 };
      const next = peakAfterImpact(side, 0.8 * balance, side);
      if (next.kind !== 'peak') throw new Error(`no peak: ${next.kind}`);
      return next.tilt / balance - slenderPeakShare(0.8, side.carryOver, 1);
    });
    expect(differences[0]).toBeGreaterThan(1e-4);
    for (const [i, difference] of differences.slice(1).entries())
      expect(Math.abs((differences[i] ?? NaN) / difference - 100)).toBeLessThan(3);
  });
});

describe('overturning by a pulse of A g α (slender) [Housner1963, from memory]', () => {
  it.each([
    [1.5, 1.098612],
    [2, 0.693147],
    [3, 0.405465],
  ])('[RO4] of A = %d takes p t₁ = %d', (share, expected) => {
    expect(Math.abs(slenderOverturningPulse(share) - expected)).toBeLessThan(TOLERANCE.pulse.figure);
    // the form in print: cosh p t₁ = 1 + 1/(2 A (A − 1))
    expect(Math.cosh(slenderOverturningPulse(share))).toBeCloseTo(1 + 1 / (2 * share * (share - 1)), 12);
  });

  it.each([1.5, 2, 3])('[RO4] of A = %d overturns a stepped slender body just beyond that duration', (share) => {
    const body = rectangle(0.001, 1);
    const free = rockingModel(body, { gravity: G });
    const { balance, frequency } = free.toward;
    const pushed = rockingModel(body, { gravity: G, groundAcceleration: share * G * balance });

    function overturns(duration: number): boolean {
      const step = duration / 100;
      const end = rock(pushed, { tilt: 0, rate: 0 }, { duration, step, endsOnFall: false });
      expect(end.outcome).toBe('still rocking');
      const { outcome, events } = rock(free, end.state, { duration: 40, step: 0.01 });
      expect(events.length > 0 || outcome === 'fell toward').toBe(true);
      return events.length === 0 && outcome === 'fell toward';
    }

    const expected = slenderOverturningPulse(share) / frequency;
    expect(overturns(expected * (1 + TOLERANCE.pulse.simulated))).toBe(true);
    expect(overturns(expected * (1 - TOLERANCE.pulse.simulated))).toBe(false);
  });
});
