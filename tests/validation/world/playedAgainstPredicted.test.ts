import { describe, expect, it } from 'vitest';
import type { Lander } from '../../../engine/lander/index.ts';
import { closedFormAt } from '../../../engine/table/index.ts';
import type { Descent } from '../../../engine/world/index.ts';
import { findLander } from '../../../levels/index.ts';
import { bisectLimit } from '../../support/bisectLimit.ts';
import { dropLander, evenGround, settle } from '../../support/dropLander.ts';
import { plainLander } from '../../support/plainLander.ts';

interface Arrival {
  readonly lander: Lander;
  readonly friction: number;
  readonly slopeDeg: number;
  readonly descentRate: number;
  readonly tiltDeg?: number;
}

function land({ lander, friction, slopeDeg, descentRate, tiltDeg = 0 }: Arrival, vx: number): Descent {
  const terrain = evenGround((slopeDeg * Math.PI) / 180, friction);
  const descent = dropLander({ lander, terrain, vx, descentRate, angle: (tiltDeg * Math.PI) / 180 });
  settle(descent);
  return descent;
}

/** The closed form for feet that land together on rigid legs, as the scorecard has it for reference [m/s]. */
function closedForm({ setup, touchdown }: Descent): number {
  if (touchdown === undefined) throw new Error('the lander came down');
  return closedFormAt(setup, touchdown);
}

/** Speed of arrival from which on the played lander does not stay upright. */
function playedLimit(arrival: Arrival, [low, high]: readonly [number, number]): number {
  return bisectLimit(low, high, 10, (vx) => land(arrival, vx).outcome?.startsWith('upright') === false);
}

/**
 * The landers as they are, on ground that grips (friction 1.1), against the closed form that stands beside their tip limit. It
 * takes the legs to share the closing speed evenly and to give nothing across; in play they also take up part of
 * the sideways speed, so the lander mostly stands beyond its limit. Where uneven crush leans a tall lander downhill, it falls
 * earlier: the lines with a minus, which the simulated touchdown answers better than any closed form.
 */
describe('a played lander on its crushing legs', () => {
  const FRICTION = 1.1;
  const CASES = [
    ['trivet', 0, 0.5, 0, 0.16],
    ['trivet', 0, 2, 0, 0.471],
    ['trivet', 0, 1.5, 3, 0.369],
    ['trivet', 0, 1.5, -3, 0.57],
    ['trivet', -5, 0.5, 0, 0.229],
    ['trivet', -5, 1.5, 0, 0.391],
    ['trivet', -5, 1.5, 3, 0.383],
    ['trivet', 4, 1.5, 0, 0.535],
    ['steeple', 0, 0.5, 0, 0.065],
    ['steeple', 0, 2, 0, 0.197],
    ['steeple', 0, 1.5, 3, 0.021],
    ['steeple', 0, 1.5, -3, 0.224],
    ['steeple', -5, 0.5, 0, 0.078],
    ['steeple', -5, 1.5, 0, -0.04],
    ['steeple', -5, 1.5, 3, 0],
    ['steeple', 4, 1.5, 0, 0.157],
    ['bolster', 0, 0.5, 0, 0.315],
    ['bolster', 0, 2, 0, 0.222],
    ['bolster', 0, 1.5, 3, 0.252],
    ['bolster', 0, 1.5, -3, 0.577],
    ['bolster', -5, 0.5, 0, 0.327],
    ['bolster', -5, 1.5, 0, 0.275],
    ['bolster', -5, 1.5, 3, 0.271],
    ['bolster', 4, 1.5, 0, 0.575],
  ] as const;

  it.each(CASES)(
    '[PL9] %s on %i deg at %f m/s down, leaning %i deg: played over predicted less 1 is %f',
    (id, slopeDeg, descentRate, tiltDeg, achieved) => {
      const arrival = { lander: findLander(id)!, friction: FRICTION, slopeDeg, descentRate, tiltDeg };
      const predicted = bisectLimit(0.2, 4, 10, (vx) => vx > closedForm(land(arrival, vx)));
      const played = playedLimit(arrival, [0.4 * predicted, 2.2 * predicted]);
      const error = played / predicted - 1;
      expect(Math.abs(error - achieved), `measured ${error.toFixed(3)}`).toBeLessThan(0.02);
    },
  );
});

/**
 * Nearly the rigid body of the formula: legs so hard that nothing crushes (200 kN, 20 MN/m a leg), feet that catch
 * (friction 5), both down at once and slowly, so that it is the pivot alone that is compared. What is left is the give of
 * the legs, which springs back, and the closing speed, which a rigid leg does not take up.
 */
describe('a played lander that is nearly rigid', () => {
  const BAND = 0.035;
  const lander = plainLander({ force: 200_000, stiffness: 2e7 });

  it.each([
    [0, 0.1, -0.022],
    [0, 0.3, 0.022],
    [-3, 0.1, -0.031],
    [-5, 0.1, -0.021],
    [-5, 0.3, 0.019],
    [-8, 0.1, -0.008],
    [-8, 0.3, 0.015],
    [4, 0.1, -0.022],
  ])(
    '[PL9] falls within 3.5 %% of the plastic pivot: on %i deg at %f m/s down, %f',
    (slopeDeg, descentRate, achieved) => {
      const arrival = { lander, friction: 5, slopeDeg, descentRate, tiltDeg: slopeDeg };
      const predicted = bisectLimit(0.6, 2.4, 11, (vx) => vx > closedForm(land(arrival, vx)));
      const error = playedLimit(arrival, [0.6, 2.4]) / predicted - 1;
      expect(Math.abs(error), `measured ${error.toFixed(3)}`).toBeLessThan(BAND);
      expect(Math.abs(error - achieved), `measured ${error.toFixed(3)}`).toBeLessThan(0.005);
    },
  );
});
