import { describe, expect, it } from 'vitest';
import { PHYSICS_DT } from '../../../engine/world/index.ts';
import { planckBlock } from '../../support/planckBlock.ts';
import { balancingRate, toppleRate, type BlockSize } from '../../support/tippingBlock.ts';

const GRAVITY = 1.62;
const SIZES: readonly BlockSize[] = [
  { b: 2, h: 3 },
  { b: 2.1, h: 1.5 },
];

function errorAt(size: BlockSize, stepRate: number): number {
  const stand = () => planckBlock(size, GRAVITY, stepRate);
  return toppleRate(stand, size, { gravity: GRAVITY, stepRate }) / balancingRate(size, GRAVITY) - 1;
}

describe('a rigid block tipped in the world', () => {
  it.each(SIZES)('[PL18] approaches the analytic rate with the first order of the step ($b x $h m)', (size) => {
    const errors = [60, 120, 240].map((rate) => errorAt(size, rate));
    const orders = errors.slice(1).map((error, i) => Math.log2((errors[i] ?? 0) / error));
    for (const error of errors) expect(error).toBeGreaterThan(0);
    // bisection resolves the rate to 6e-6 of itself, which is 5 % of the smallest error
    for (const order of orders) expect(Math.abs(order - 1), `orders ${orders.join()}`).toBeLessThan(0.1);
  });

  it.each([
    { b: 2, h: 3, bound: 0.0013 },
    { b: 2.1, h: 1.5, bound: 0.0016 },
  ])('[PL18] is off by less than $bound at the physics step ($b x $h m)', ({ bound, ...size }) => {
    // measured: 0.12 % and 0.15 %
    expect(Math.abs(errorAt(size, Math.round(1 / PHYSICS_DT)))).toBeLessThan(bound);
  });
});
