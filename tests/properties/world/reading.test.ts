import { describe, expect, it } from 'vitest';
import { groundHeight } from '../../../engine/ground/index.ts';
import { nextUniform, seedRandom } from '../../../engine/math/index.ts';
import { createDescent, readDescent } from '../../../engine/world/index.ts';
import { MOON, rollingGround } from '../../support/dropLander.ts';
import { plainLander } from '../../support/plainLander.ts';

/** The plain lander stands on x = -1.5 and 1.5 m, 2 m below its center of mass. */
const [HALF_STANCE, CENTER] = [1.5, 2];

function leaning(x: number, angle: number) {
  const terrain = rollingGround();
  const start = { x, y: 40, angle, vx: 0, vy: 0, rate: 0 };
  return {
    terrain,
    reading: readDescent(createDescent({ lander: plainLander(), gravity: MOON, terrain, start, propellant: 0 })),
  };
}

describe('a reading', () => {
  it('[PL15] shows feet, height and slope of a rigid body over its ground, wherever it is and however it leans', () => {
    const random = seedRandom(5);
    for (let i = 0; i < 60; i++) {
      const [x, angle] = [-150 + 300 * nextUniform(random), -0.5 + nextUniform(random)];
      const { terrain, reading } = leaning(x, angle);
      const [c, s] = [Math.cos(angle), Math.sin(angle)];
      const feet = [-1, 1].map((side) => [
        x + c * side * HALF_STANCE + s * CENTER,
        40 + s * side * HALF_STANCE - c * CENTER,
      ]);
      for (const { footX, footY } of reading.legs) {
        const nearest = Math.min(...feet.map(([fx, fy]) => Math.abs(footX - fx!) + Math.abs(footY - fy!)));
        expect(nearest).toBeLessThan(1e-9);
      }
      const clear = feet.map(([fx, fy]) => fy! - groundHeight(terrain, fx!));
      expect(reading.height).toBeCloseTo(Math.min(...clear), 9);
      const [left, right] = feet.map(([fx]) => fx!);
      const rise = groundHeight(terrain, right!) - groundHeight(terrain, left!);
      expect(Math.tan(reading.slope)).toBeCloseTo(rise / (right! - left!), 9);
    }
  });
});
