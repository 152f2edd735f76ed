import { describe, expect, it } from 'vitest';
import { createDescent, stepDescent } from '../../../engine/world/index.ts';
import { COAST, evenGround, MOON } from '../../support/dropLander.ts';
import { plainLander } from '../../support/plainLander.ts';

function standing() {
  return createDescent({
    lander: plainLander({ propellant: 100 }),
    gravity: MOON,
    terrain: evenGround(),
    start: { x: 0, y: 50, angle: 0, vx: 0, vy: 0, rate: 0 },
    propellant: 100,
  });
}

/** Names of the numbers of an object. */
function numbersOf(record: object): readonly string[] {
  return Object.entries(record).flatMap(([name, value]) => (typeof value === 'number' ? [name] : []));
}

describe('the state of a descent', () => {
  it('is refused by the step when any one of its numbers is not finite', () => {
    const plain = standing();
    const places = [
      ...numbersOf(plain.motion).map((name) => ['motion', name] as const),
      ...numbersOf(plain.bulk).map((name) => ['bulk', name] as const),
    ];
    expect(places.length).toBeGreaterThan(8);
    for (const [part, name] of places) {
      for (const wrong of [Number.NaN, Infinity, -Infinity]) {
        const descent = standing();
        Object.assign(descent[part], { [name]: wrong });
        expect(() => stepDescent(descent, COAST), `${part}.${name} ${wrong}`).toThrow(/every number .* is finite/);
      }
    }
  });

  it('is refused when thrust, propellant or the force of the feet is not finite', () => {
    const wrongs = [Number.NaN, Infinity, -Infinity];
    for (const wrong of wrongs) {
      for (const name of ['thrust', 'propellant'] as const) {
        const descent = standing();
        descent[name] = wrong;
        expect(() => stepDescent(descent, COAST), `${name} ${wrong}`).toThrow(/every number .* is finite/);
      }
      for (const name of ['forceX', 'forceY', 'moment'] as const) {
        const descent = standing();
        descent.feet[name] = wrong;
        expect(() => stepDescent(descent, COAST), `${name} of the feet ${wrong}`).toThrow(/every number .* is finite/);
      }
    }
  });
});
