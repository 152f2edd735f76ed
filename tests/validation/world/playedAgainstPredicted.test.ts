import { describe, expect, it } from 'vitest';
import type { Lander } from '../../../engine/lander/index.ts';
import { closedFormAt } from '../../../engine/table/index.ts';
import type { Descent } from '../../../engine/world/index.ts';
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
 * Nearly the rigid body of the formula: legs so hard that nothing crushes (200 kN, 20 MN/m a leg), feet that catch
 * (friction 5), both down at once and slowly, so that it is the pivot alone that is compared. What is left is the give of
 * the legs, which springs back, and the closing speed, which a rigid leg does not take up.
 */
describe('a played lander that is nearly rigid', () => {
  // 0.039 at most since the legs of the world obey the law of the touchdown simulation (0.031 by their own law before)
  const BAND = 0.04;
  const lander = plainLander({ force: 200_000, stiffness: 2e7 });

  it.each([
    [0, 0.1],
    [0, 0.3],
    [-3, 0.1],
    [-5, 0.1],
    [-5, 0.3],
    [-8, 0.1],
    [-8, 0.3],
    [4, 0.1],
  ])('[PL9] falls within 4 percent of the plastic pivot: on %i deg at %f m/s down', (slopeDeg, descentRate) => {
    const arrival = { lander, friction: 5, slopeDeg, descentRate, tiltDeg: slopeDeg };
    const predicted = bisectLimit(0.6, 2.4, 11, (vx) => vx > closedForm(land(arrival, vx)));
    const error = playedLimit(arrival, [0.6, 2.4]) / predicted - 1;
    expect(Math.abs(error), `measured ${error.toFixed(3)}`).toBeLessThan(BAND);
  });
});
