import { describe, expect, it } from 'vitest';
import { dropLander, MOON, settle } from '../../support/dropLander.ts';
import { plainLander } from '../../support/plainLander.ts';

/** The hull hangs so far above the footpad plane that legs of next to no strength do not slow it before it strikes [m]. */
const CLEARANCE = 0.02;

function strikeSpeed(vx: number, rate: number): number {
  const box = [-1, 1].flatMap((x) => [-1, 1].flatMap((y) => [CLEARANCE, 3].map((z) => [x, y, z] as const)));
  const lander = plainLander({ hull: box, force: 10, stroke: 0.5, halfStance: 1.2 });
  const events = settle(dropLander({ lander, vx, descentRate: 2, rate }), 60);
  const strike = events.find(({ kind }) => kind === 'hullDown');
  if (strike?.kind !== 'hullDown') throw new Error('the hull came down');
  return strike.speed;
}

describe('a hull that strikes the ground', () => {
  it.each([
    { vx: 0, rate: 0 },
    { vx: 3, rate: 0 },
    { vx: 0, rate: 0.2 },
    { vx: 0, rate: -0.2 },
  ])(
    '[PL16] is told with the speed at which its fastest corner closes: $vx m/s across, $rate rad/s',
    ({ vx, rate }) => {
      // free fall through the clearance, and its corners 1 m to either side
      const expected = Math.sqrt(4 + 2 * MOON * CLEARANCE) + Math.abs(rate);
      expect(Math.abs(strikeSpeed(vx, rate) / expected - 1)).toBeLessThan(0.01);
    },
  );
});
