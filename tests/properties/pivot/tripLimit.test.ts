import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { tripLimit, type ContactCondition, type PivotBody } from '../../../engine/pivot/index.ts';

const PARAMETERS = { seed: 20_0611, numRuns: 500 };

/** Numbers spread evenly; fast-check's own doubles crowd around 0. */
const between = (least: number, most: number) =>
  fc.integer({ min: 0, max: 1_000_000 }).map((share) => least + ((most - least) * share) / 1_000_000);

const bodies: fc.Arbitrary<PivotBody> = fc
  .record({
    halfStance: between(0.1, 10),
    centerHeight: between(0.1, 10),
    spread: between(0, 2),
  })
  .map(({ halfStance, centerHeight, spread }) => ({
    mass: 1000,
    halfStance,
    centerHeight,
    inertia: 1000 * spread * (halfStance * halfStance + centerHeight * centerHeight),
  }));
const optional = <T>(arb: fc.Arbitrary<T>) => fc.option(arb, { nil: undefined });
const conditions = fc.record({
  gravity: between(0.1, 25),
  /** share of the static tilt */
  steepness: between(-0.98, 0.98),
  descentRate: optional(between(0, 6)),
  rate: between(-0.5, 0.5),
  firstContact: fc.constantFrom('leading' as const, 'trailing' as const, 'together' as const),
});

function conditionOf(
  body: PivotBody,
  drawn: typeof conditions extends fc.Arbitrary<infer T> ? T : never,
): ContactCondition {
  const { gravity, steepness, descentRate, rate, firstContact } = drawn;
  const slope = steepness * Math.atan(body.halfStance / body.centerHeight);
  return { gravity, slope, rate, firstContact, ...(descentRate === undefined ? {} : { descentRate }) };
}

function limitOf(body: PivotBody, condition: ContactCondition) {
  const limit = tripLimit(body, condition);
  if (limit.kind !== 'limit') throw new Error('the body stands');
  return limit;
}

describe('trip limit of any body', () => {
  it('[TR12] obeys Froude similarity: lengths x k, gravity x s, speeds x sqrt(k s)', () => {
    const scales = between(0.1, 10);
    fc.assert(
      fc.property(bodies, conditions, scales, scales, (body, drawn, k, s) => {
        const condition = conditionOf(body, drawn);
        const speed = Math.sqrt(k * s);
        const scaledBody = {
          mass: body.mass * 3,
          halfStance: body.halfStance * k,
          centerHeight: body.centerHeight * k,
          inertia: body.inertia * 3 * k * k,
        };
        const scaledCondition: ContactCondition = {
          ...condition,
          gravity: condition.gravity * s,
          rate: (condition.rate ?? 0) * Math.sqrt(s / k),
          ...(condition.descentRate === undefined ? {} : { descentRate: condition.descentRate * speed }),
        };
        const small = limitOf(body, condition);
        const large = limitOf(scaledBody, scaledCondition);
        const size = Math.abs(small.plastic.horizontal) * speed + speed * 1e-3;
        expect(Math.abs(large.plastic.horizontal - small.plastic.horizontal * speed) / size).toBeLessThan(1e-6);
      }),
      PARAMETERS,
    );
  });

  it('[TR2] is never below its lossless bound, whatever the contact', () => {
    let both = 0;
    fc.assert(
      fc.property(bodies, conditions, (body, drawn) => {
        const { plastic, lossless } = limitOf(body, conditionOf(body, drawn));
        for (const value of [plastic.alongGround, plastic.horizontal]) expect(Number.isFinite(value)).toBe(true);
        if (lossless === undefined) return;
        both++;
        expect(lossless.horizontal).toBeLessThanOrEqual(plastic.horizontal * (1 + 1e-12) + 1e-12);
      }),
      PARAMETERS,
    );
    expect(both).toBeGreaterThan(100);
  });

  it('[TR3] falls as the ground falls more steeply in the direction of travel', () => {
    const shares = between(-0.98, 0.98);
    fc.assert(
      fc.property(bodies, shares, shares, (body, one, other) => {
        const tilt = Math.atan(body.halfStance / body.centerHeight);
        const gentle = limitOf(body, { gravity: 1.62, slope: Math.min(one, other) * tilt });
        const steep = limitOf(body, { gravity: 1.62, slope: Math.max(one, other) * tilt });
        expect(steep.plastic.alongGround).toBeLessThanOrEqual(gentle.plastic.alongGround);
        expect(steep.lossless?.alongGround ?? 0).toBeLessThanOrEqual(gentle.lossless?.alongGround ?? 0);
      }),
      PARAMETERS,
    );
  });

  it('[TR5] falls as the body rate toward the edge grows', () => {
    const rates = between(-0.5, 0.5);
    fc.assert(
      fc.property(bodies, conditions, rates, rates, (body, drawn, one, other) => {
        const condition = conditionOf(body, drawn);
        const away = limitOf(body, { ...condition, rate: Math.min(one, other) });
        const toward = limitOf(body, { ...condition, rate: Math.max(one, other) });
        const rounding = 1e-12 * (1 + Math.abs(away.plastic.horizontal));
        expect(toward.plastic.horizontal - away.plastic.horizontal).toBeLessThanOrEqual(rounding);
      }),
      PARAMETERS,
    );
  });
});
