import { describe, expect, it } from 'vitest';
import { stepDescent, type DescentEvent } from '../../../engine/world/index.ts';
import { COAST, dropLander, evenGround, MOON, settle } from '../../support/dropLander.ts';
import { plainLander } from '../../support/plainLander.ts';

/** The hull hangs so far above the footpad plane that legs of next to no strength do not slow it before it strikes [m]. */
const CLEARANCE = 0.02;

/** A box on such legs. */
const hull = [-1, 1].flatMap((x) => [-1, 1].flatMap((y) => [CLEARANCE, 3].map((z) => [x, y, z] as const)));
const [MASS, INERTIA] = [2000, 3000];
const lander = plainLander({ mass: MASS, inertia: INERTIA, hull, force: 10, stroke: 0.5, halfStance: 1.2 });

function strikeSpeed(vx: number, rate: number): number {
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

  it.each([0.3, -0.3])(
    '[PL3] on one corner is turned by the push of that corner: leaning %f rad, without friction',
    (angle) => {
      const descent = dropLander({ lander, terrain: evenGround(0, 0), angle, descentRate: 2 });
      let strike: DescentEvent | undefined;
      for (let tick = 0; tick < 60 && strike === undefined; tick++)
        strike = stepDescent(descent, COAST).find(({ kind }) => kind === 'hullDown');
      if (strike?.kind !== 'hullDown') throw new Error('the hull came down');
      // the corner on the low side, from the center of mass: its speed ends, J = v / (1/m + r²/I), and J r / I is what turns
      const across = -Math.sign(angle) * (Math.cos(angle) - (2 - CLEARANCE) * Math.sin(Math.abs(angle)));
      const push = strike.speed / (1 / MASS + (across * across) / INERTIA);
      expect(Math.abs(descent.motion.rate / ((push * across) / INERTIA) - 1)).toBeLessThan(0.02);
    },
  );
});
