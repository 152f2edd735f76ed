import { describe, expect, it } from 'vitest';
import { WORLDS, findWorld } from '../../../engine/worlds.ts';
import { requiredStance, tripLimit, type PivotBody } from '../../../engine/pivot/index.ts';

/**
 * Trip limits against figures that were not made by this engine. Gravity rounded as in the source tables; the tolerance of
 * a printed figure is half a unit in its last place. Achieved: every figure to all its printed places.
 */
const DEG = Math.PI / 180;
const GRAVITY = { earth: 9.80665, mars: 3.72787, moon: 1.62422 } as const;
const PRINTED = { four: 0.5e-4, six: 0.5e-6, three: 0.5e-3 } as const;

function limitOf(body: PivotBody, gravity: number, slope = 0) {
  const limit = tripLimit(body, { gravity, slope });
  if (limit.kind !== 'limit' || limit.lossless === undefined) throw new Error('the body has both limits');
  return { plastic: limit.plastic.alongGround, lossless: limit.lossless.alongGround };
}

// h 2 m, b 1.5 m, I_cg/m 1.5 m²
const block: PivotBody = { mass: 1, halfStance: 1.5, centerHeight: 2, inertia: 1.5 };

describe('level trip limit [TPT2020: same physics, figures from the project notes, not seen]', () => {
  it.each([
    ['earth', 4.3589],
    ['mars', 2.6875],
    ['moon', 1.774],
  ] as const)('[TR1] on %s is %d m/s', (world, expected) => {
    expect(Math.abs(limitOf(block, GRAVITY[world]).plastic - expected)).toBeLessThan(PRINTED.four);
  });

  it('[TR1] on Earth is the square root of 19 within the rounding of g, since 2 g I_P (L - h)/(m h^2) is 1.9375 g', () => {
    expect(limitOf(block, GRAVITY.earth).plastic).toBeCloseTo(Math.sqrt(1.9375 * 9.80665), 12);
  });
});

describe('trip limit on falling ground (textbook mechanics, worked apart)', () => {
  it.each([
    ['moon', 5, 1.5401],
    ['moon', 8, 1.3984],
    ['moon', 12, 1.208],
    ['earth', 5, 3.7844],
    ['earth', 8, 3.4361],
    ['earth', 12, 2.9682],
  ] as const)('[TR3] on %s at %d deg is %d m/s', (world, slopeDeg, expected) => {
    expect(Math.abs(limitOf(block, GRAVITY[world], slopeDeg * DEG).plastic - expected)).toBeLessThan(PRINTED.four);
  });
});

describe('critical sliding velocity [NHTSA2001, formula from memory]', () => {
  it('[TR1] of a vehicle of track 1.55 m, height 0.70 m, 1800 kg, 700 kg m^2 is 4.515691 m/s', () => {
    const vehicle: PivotBody = { mass: 1800, halfStance: 1.55 / 2, centerHeight: 0.7, inertia: 700 };
    expect(Math.abs(limitOf(vehicle, GRAVITY.earth).plastic - 4.515691)).toBeLessThan(PRINTED.six);
  });
});

describe('gravity scaling (dimensional analysis: speed goes with the square root of g)', () => {
  // seven figures of the ratio need more of the Moon's gravity than the five of the table
  const moon = findWorld('moon')?.gravity ?? 0;

  it('[TR12] makes the trip limit on Earth 2.457186 times that on the Moon, on every slope', () => {
    for (const slopeDeg of [-8, 0, 5, 12]) {
      for (const measure of ['plastic', 'lossless'] as const) {
        const ratio =
          limitOf(block, GRAVITY.earth, slopeDeg * DEG)[measure] / limitOf(block, moon, slopeDeg * DEG)[measure];
        expect(Math.abs(ratio - 2.457186)).toBeLessThan(PRINTED.six);
      }
    }
  });

  it('[TR12] holds between all listed worlds', () => {
    const earth = limitOf(block, GRAVITY.earth).plastic;
    expect(WORLDS.length).toBeGreaterThan(3);
    for (const world of WORLDS) {
      const expected = Math.sqrt(world.gravity / GRAVITY.earth);
      expect(Math.abs(limitOf(block, world.gravity).plastic / earth / expected - 1)).toBeLessThan(1e-14);
    }
  });
});

describe('stance for equal speed, Moon against Earth (plastic pivot of a point mass, worked apart)', () => {
  it.each([
    [0.05, 2.446],
    [0.2, 2.319],
    [0.5, 2.054],
  ])('[TR10] from b/h %d on Earth grows by %d: not one number', (ratio, expected) => {
    const point = { mass: 1, centerHeight: 1, inertia: 0 };
    const speed = limitOf({ ...point, halfStance: ratio }, GRAVITY.earth).plastic;
    const stance = requiredStance(point, { speed, gravity: GRAVITY.moon }).plastic;
    if (stance.kind !== 'stance') throw new Error('a stance exists');
    expect(Math.abs(stance.halfStance / ratio - expected)).toBeLessThan(PRINTED.three);
  });
});

describe('stance rule of thumb (common practice, no source): the Moon needs about 2.5 times the stance of Earth', () => {
  const point = { mass: 1, centerHeight: 4, inertia: 0 };

  function growth(halfStance: number) {
    const body = { ...point, halfStance };
    const earth = limitOf(body, GRAVITY.earth);
    const plastic = requiredStance(point, { speed: earth.plastic, gravity: GRAVITY.moon }).plastic;
    const lossless = requiredStance(point, { speed: earth.lossless, gravity: GRAVITY.moon }).lossless;
    if (plastic.kind !== 'stance' || lossless.kind !== 'stance') throw new Error('both exist');
    return { plastic: plastic.halfStance / halfStance, lossless: lossless.halfStance / halfStance };
  }

  it('[TR10] lies between the plastic and the lossless model for a stance of 1.8 m becoming 4.5 m', () => {
    const { plastic, lossless } = growth(0.9);
    expect(plastic).toBeLessThan(4.5 / 1.8);
    expect(lossless).toBeGreaterThan(4.5 / 1.8);
  });

  it('[TR10] tends to the square root of the gravity ratio as the stance narrows, in both models', () => {
    const limit = Math.sqrt(GRAVITY.earth / GRAVITY.moon);
    const wide = growth(0.04);
    const narrow = growth(0.004);
    for (const measure of ['plastic', 'lossless'] as const) {
      expect(Math.abs(narrow[measure] - limit)).toBeLessThan(Math.abs(wide[measure] - limit) / 50);
      expect(Math.abs(narrow[measure] - limit)).toBeLessThan(1e-4);
    }
  });
});

describe('tip speed of a lander some 4 m tall (common practice, no source): a few meters per second at most', () => {
  it('[TR1] holds on the Moon for every stance up to the height and every spread of mass', () => {
    const moon = findWorld('moon')?.gravity ?? 0;
    let count = 0;
    for (const halfStance of [0.8, 1.2, 1.6, 2]) {
      for (const centerHeight of [1.2, 1.6, 2]) {
        for (const spread of [0, 0.7, 1.4]) {
          const { plastic } = limitOf({ mass: 1, halfStance, centerHeight, inertia: spread }, moon);
          // a stance as wide as the center is high or less; wider ones are no longer "tall"
          if (halfStance > centerHeight) continue;
          count++;
          expect(plastic).toBeLessThan(4);
          expect(plastic).toBeGreaterThan(0.5);
        }
      }
    }
    expect(count).toBeGreaterThan(20);
  });
});
