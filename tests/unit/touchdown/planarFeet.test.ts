import { describe, expect, it } from 'vitest';
import { nextUniform, seedRandom } from '../../../engine/math/index.ts';
import { DEFAULT_DAMPING } from '../../../engine/touchdown/constants.ts';
import {
  preparePlanarFeet,
  pressFeet,
  soleX,
  soleY,
  soleZ,
  takeEdgeImpulse,
  weighFeet,
  type PlanarFeet,
} from '../../../engine/touchdown/planarFeet.ts';
import { evenGround, MOON } from '../../support/dropLander.ts';
import { plainLander } from '../../support/plainLander.ts';

/** Four upright legs too strong to crush, 1.5 m to either side and 2 m below the center of mass: what they press follows from Hooke's law. */
const [MASS, HALF_STANCE, HEIGHT, STIFFNESS] = [2000, 1.5, 2, 2e6];

const REST = { leastMass: MASS, gravity: MOON, legs: [], interval: 1 / 240 };

function feetOn(friction: number): PlanarFeet {
  const ground = { shape: { kind: 'profile', terrain: evenGround(0, friction) }, friction } as const;
  const feet = preparePlanarFeet({ ...REST, lander: plainLander({ force: 1e6 }), azimuth: 0, ground });
  weighFeet(feet, MASS, HEIGHT);
  press(feet, { y: HEIGHT + 1e-3 });
  return feet;
}

function press(
  feet: PlanarFeet,
  { x = 0, y = HEIGHT, vx = 0, vy = 0, rate = 0, angle = 0 }: Readonly<Partial<Record<string, number>>>,
): readonly [forceX: number, forceY: number, moment: number] {
  pressFeet(feet, { x, y, vx, vy, rate }, Math.cos(angle / 2), Math.sin(angle / 2));
  return [feet.forceX, feet.forceY, feet.moment];
}

/** Of each leg, c = 2 zeta sqrt(k m / n) [N s/m]. */
function dashpot(mass: number): number {
  return 2 * DEFAULT_DAMPING * Math.sqrt((STIFFNESS * mass) / 4);
}

/** |a - b| over the larger of |b| and one newton. */
function miss(a: number, b: number): number {
  return Math.abs(a - b) / Math.max(1, Math.abs(b));
}

describe('the feet of a body that moves in a plane', () => {
  it('[PL5] press nothing before they are down', () => {
    const ground = { shape: { kind: 'profile', terrain: evenGround(0, 0.7) }, friction: 0.7 } as const;
    const feet = preparePlanarFeet({ ...REST, lander: plainLander({ force: 1e6 }), azimuth: 0.4, ground });
    const impulse = new Float64Array([7, 7, 7]);
    takeEdgeImpulse(feet, impulse);
    expect([feet.forceX, feet.forceY, feet.moment, ...impulse].map(Math.abs)).toEqual([0, 0, 0, 0, 0, 0]);
    expect(press(feet, { y: HEIGHT + 1 }).map(Math.abs)).toEqual([0, 0, 0]);
  });

  it('[PL5] press by the stiffness of their legs when they are down and still', () => {
    const feet = feetOn(0.7);
    press(feet, { y: HEIGHT - 0.001 });
    const [forceX, forceY, moment] = press(feet, { y: HEIGHT - 0.001 });
    expect(miss(forceY, 4 * STIFFNESS * 0.001)).toBeLessThan(1e-9);
    expect(Math.abs(forceX) + Math.abs(moment)).toBeLessThan(1e-6);
  });

  it.each([MASS, 1200])(
    '[PL5] press by their dashpots too while they go down, for the %i kg that they carry',
    (mass) => {
      const feet = feetOn(0.7);
      weighFeet(feet, mass, HEIGHT);
      for (const y of [0.001, 0.001]) press(feet, { y: HEIGHT - y });
      const [, forceY] = press(feet, { y: HEIGHT - 0.0012 });
      const expected = 4 * STIFFNESS * 0.0012 + (4 * dashpot(mass) * 0.0002) / feet.step;
      expect(miss(forceY, expected)).toBeLessThan(1e-9);
    },
  );

  it.each([MASS, 1200])('[PL5] hold the ground by the same spring and dashpot across: %i kg', (mass) => {
    const feet = feetOn(0.7);
    weighFeet(feet, mass, HEIGHT);
    for (const y of [0.001, 0.001]) press(feet, { y: HEIGHT - y });
    const moved = press(feet, { x: 0.0001, y: HEIGHT - 0.001 });
    const expected = -4 * STIFFNESS * 0.0001 - (4 * dashpot(mass) * 0.0001) / feet.step;
    expect(miss(moved[0], expected)).toBeLessThan(1e-9);
    // the soles are 2 m below the center of mass: pushed to the left there, the body turns clockwise
    expect(miss(moved[2], HEIGHT * expected)).toBeLessThan(1e-9);
    const held = press(feet, { x: 0.0001, y: HEIGHT - 0.001 });
    expect(miss(held[0], -4 * STIFFNESS * 0.0001)).toBeLessThan(1e-9);
  });

  it('[PL5] are held by their dashpots at the speed at which they meet the ground, for whatever share of the step', () => {
    for (const depth of [0.0001, 0.0005]) {
      // micrometers across are differences of places meters away: eight digits are left
      // 1 mm above before: this share of the step has passed since they met it
      const feet = feetOn(5);
      const [vx, since] = [0.02, (feet.step * depth) / (depth + 0.001)];
      const [forceX, forceY] = press(feet, { y: HEIGHT - depth, vx });
      expect(miss(forceX, -4 * (STIFFNESS * vx * since + dashpot(MASS) * vx))).toBeLessThan(1e-7);
      expect(miss(forceY, 4 * (STIFFNESS * depth + (dashpot(MASS) * depth) / since))).toBeLessThan(1e-7);
    }
  });

  it('[PL5] each press by how far their own side is down, and turn the body back', () => {
    const [angle, y] = [0.0004, HEIGHT - 0.001];
    const feet = feetOn(0);
    press(feet, { y, angle });
    const [forceX, forceY, moment] = press(feet, { y, angle });
    const sides = [-1, 1].map((side) => {
      const [c, s] = [Math.cos(angle), Math.sin(angle)];
      const depth = HEIGHT * c - side * HALF_STANCE * s - y;
      return { arm: side * HALF_STANCE * c + HEIGHT * s, force: 2 * STIFFNESS * depth };
    });
    expect(sides.every(({ force }) => force > 0)).toBe(true);
    expect(Math.abs(forceX)).toBeLessThan(1e-6);
    expect(miss(forceY, sides[0]!.force + sides[1]!.force)).toBeLessThan(1e-9);
    expect(miss(moment, sides[0]!.arm * sides[0]!.force + sides[1]!.arm * sides[1]!.force)).toBeLessThan(1e-9);
    expect(moment).toBeLessThan(0);
  });

  it('[PL5] press alike wherever the center of mass has sunk to as propellant burns', () => {
    const feet = feetOn(0.7);
    weighFeet(feet, MASS, HEIGHT - 0.25);
    press(feet, { y: HEIGHT - 0.25 - 0.001 });
    const [, forceY] = press(feet, { y: HEIGHT - 0.25 - 0.001 });
    expect(miss(forceY, 4 * STIFFNESS * 0.001)).toBeLessThan(1e-9);
  });

  it('[PL14] answer the mirrored motion with the mirrored force and impulse', () => {
    const random = seedRandom(8);
    const [right, left] = [feetOn(0.5), feetOn(0.5)];
    const impulses = { right: new Float64Array(3), left: new Float64Array(3) };
    let pressed = 0;
    let struck = 0;
    for (let i = 0; i < 400; i++) {
      const draw = (size: number): number => size * (2 * nextUniform(random) - 1);
      const place = {
        x: draw(0.01),
        y: HEIGHT - 0.0005 + draw(0.001),
        vx: draw(1),
        vy: draw(1),
        rate: draw(0.3),
        angle: draw(0.003),
      };
      const [forceX, forceY, moment] = press(right, place);
      const other = press(left, { ...place, x: -place.x, vx: -place.vx, rate: -place.rate, angle: -place.angle });
      expect(miss(other[0], -forceX)).toBeLessThan(1e-6);
      expect(miss(other[1], forceY)).toBeLessThan(1e-6);
      expect(miss(other[2], -moment)).toBeLessThan(1e-6);
      takeEdgeImpulse(right, impulses.right);
      takeEdgeImpulse(left, impulses.left);
      const [across = 0, up = 0, turn = 0] = impulses.right;
      expect([...impulses.left].every((value, k) => miss(value, [-across, up, -turn][k]!) < 1e-6)).toBe(true);
      if (forceY > 0) pressed++;
      if (up !== 0) struck++;
    }
    expect(pressed).toBeGreaterThan(50);
    expect(struck).toBeGreaterThan(20);
  });

  it.each([Math.PI / 2, 0.4, -2])(
    '[PL21] stand where the view along the given edge shows them, at %f rad',
    (azimuth) => {
      const lander = plainLander();
      const narrow = lander.legs.map((leg) => ({
        ...leg,
        footpad: [leg.footpad[0], 0.8 * leg.footpad[1], 0] as const,
      }));
      const ground = { shape: { kind: 'profile', terrain: evenGround() }, friction: 0.7 } as const;
      const feet = preparePlanarFeet({ ...REST, lander: { ...lander, legs: narrow }, azimuth, ground });
      const [c, s] = [Math.cos(azimuth), Math.sin(azimuth)];
      narrow.forEach(({ footpad: [x, y] }, leg) => {
        // at a right angle +y of the lander is to the right, its +x toward the viewer
        expect(soleX(feet, leg)).toBeCloseTo(c * x + s * y, 12);
        expect(soleY(feet, leg)).toBeCloseTo(-HEIGHT, 12);
        expect(soleZ(feet, leg)).toBeCloseTo(s * x - c * y, 12);
        expect([feet.across[leg], feet.aside[leg]]).toEqual([soleX(feet, leg), soleZ(feet, leg)]);
      });
    },
  );
});
