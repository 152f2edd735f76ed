import { describe, expect, it } from 'vitest';
import { peakAfterImpact, quarterPeriod, rockingModel } from '../../../engine/pivot/rocking.ts';
import { rock, rockingEnergy, type RockingEvent } from '../../../engine/pivot/rockingMotion.ts';
import type { PivotBody } from '../../../engine/pivot/tripLimit.ts';

const BODY: PivotBody = { mass: 3, halfStance: 0.5, centerHeight: 1, inertia: 1 };
const MODEL = rockingModel(BODY, { gravity: 1.62 });
const START = { tilt: 0.85 * MODEL.toward.balance, rate: 0 };

/** Times of the first impacts and tilts of the peaks between them, exact. */
function exactMotion(count: number): { readonly impacts: readonly number[]; readonly peaks: readonly number[] } {
  const [impacts, peaks]: [number[], number[]] = [[], []];
  let [time, tilt] = [0, START.tilt];
  for (let n = 0; n < count; n++) {
    time += quarterPeriod(MODEL.toward, tilt) * (n === 0 ? 1 : 2);
    impacts.push(time);
    const next = peakAfterImpact(MODEL.toward, tilt, MODEL.away);
    if (next.kind !== 'peak') throw new Error(`no peak: ${next.kind}`);
    tilt = next.tilt;
    peaks.push(tilt);
  }
  return { impacts, peaks };
}

function eventsOf(step: number, kind: RockingEvent['kind']): readonly RockingEvent[] {
  return rock(MODEL, START, { duration: 20, step }).events.filter((event) => event.kind === kind);
}

/** log2 of the ratio of successive errors, the step being halved each time. */
function orders(errors: readonly number[]): readonly number[] {
  return errors.slice(1).map((error, i) => Math.log2((errors[i] ?? NaN) / error));
}

describe('the rocking integrator', () => {
  // frequency about 1: from 0.16 s down, far above rounding at 0.02 s
  const steps = [0.16, 0.08, 0.04, 0.02];
  const exact = exactMotion(5);

  it.each([0, 1, 4])('[RO5] places impact %d to order 4 in the step', (index) => {
    const errors = steps.map((step) =>
      Math.abs((eventsOf(step, 'impact')[index]?.time ?? NaN) - (exact.impacts[index] ?? NaN)),
    );
    // in the asymptotic range, and far above rounding
    expect(errors[0]).toBeLessThan(1e-3);
    expect(errors.at(-1)).toBeGreaterThan(1e-10);
    for (const order of orders(errors).slice(1)) expect(Math.abs(order - 4)).toBeLessThan(0.3);
  });

  it.each([0, 1, 3])('[RO5] reaches peak %d to order 4 in the step at least', (index) => {
    const errors = steps.map((step) =>
      Math.abs(Math.abs(eventsOf(step, 'peak')[index]?.state.tilt ?? NaN) - (exact.peaks[index] ?? NaN)),
    );
    expect(errors.at(-1)).toBeGreaterThan(1e-12);
    for (const order of orders(errors).slice(1)) expect(order).toBeGreaterThan(3.7);
  });

  it('[RO6] conserves energy between impacts to order 4 at least', () => {
    const before = rockingEnergy(MODEL, START);
    expect(before).toBeGreaterThan(0.1);
    const errors = steps.map((step) => {
      const impact = eventsOf(step, 'impact')[0];
      if (impact === undefined) throw new Error('no impact');
      return Math.abs(rockingEnergy(MODEL, impact.state) / before - 1);
    });
    expect(errors[0]).toBeLessThan(1e-3);
    expect(errors.at(-1)).toBeGreaterThan(1e-13);
    for (const order of orders(errors)) expect(order).toBeGreaterThan(3.7);
  });
});
