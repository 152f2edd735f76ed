import { describe, expect, it } from 'vitest';
import { massProperties } from '../../../engine/lander/index.ts';
import { simulateArrival } from '../../../engine/table/index.ts';
import type { DescentSetup, TouchdownState } from '../../../engine/world/index.ts';
import { rotate } from '../../../engine/math/quaternion.ts';
import { arrivalCase } from '../../../engine/table/simulateArrival.ts';
import { attitudeOf } from '../../../engine/touchdown/attitude.ts';
import { evenGround, MOON } from '../../support/dropLander.ts';
import { shippedLander } from '../../support/touchDown.ts';

const SETUP: DescentSetup = {
  lander: shippedLander('trivet'),
  gravity: MOON,
  terrain: evenGround(-0.05, 1.1),
  start: { x: 0, y: 50, angle: 0, vx: 0, vy: 0, rate: 0 },
  propellant: 100,
};
const MASS = massProperties(SETUP.lander).mass;

const TOUCHDOWN: TouchdownState = {
  tick: 900,
  x: 4,
  vx: 0.6,
  descentRate: 1.2,
  angle: 0,
  rate: 0,
  slope: -0.05,
  mass: MASS,
  firstFoot: 'both',
};

function arriving(change: Partial<TouchdownState> = {}) {
  return arrivalCase(SETUP, { ...TOUCHDOWN, ...change });
}

/** World direction of a lander's own direction as it arrives. */
function inWorld(change: Partial<TouchdownState>, direction: readonly [number, number, number]) {
  const { yaw = 0, pitch = 0, roll = 0 } = arriving(change).state;
  return rotate(attitudeOf(yaw, pitch, roll), direction);
}

describe('the arrival of a played descent, in six degrees of freedom', () => {
  it('keeps ground, place, velocities and mass', () => {
    const burned = arriving({ mass: MASS - 60 });
    expect(massProperties(burned.lander).mass).toBeCloseTo(MASS - 60, 9);
    expect(burned.ground).toEqual({ shape: { kind: 'profile', terrain: SETUP.terrain }, friction: 1.1 });
    expect(burned.state).toMatchObject({ horizontalSpeed: 0.6, travelAzimuth: 0, descentRate: 1.2, position: [4, 0] });
  });

  it.each([
    ['right', { vx: 0.6 }, 1],
    ['left', { vx: -0.6 }, -1],
    ['downhill, with no travel', { vx: 0 }, 1],
    ['downhill to the left', { vx: 0, slope: 0.05 }, -1],
  ] as const)('turns an edge of the footprint to where it goes: %s', (_, change, side) => {
    // Trivet stands on four legs at 45, 135, 225 and 315 deg: edges face along its own axes
    const facing = [
      [1, 0, 0],
      [0, 1, 0],
      [-1, 0, 0],
      [0, -1, 0],
    ] as const;
    const toward = facing.map((direction) => inWorld(change, direction)[0] * side);
    expect(Math.max(...toward)).toBeCloseTo(1, 9);
  });

  it('leans the nose to the left for an angle counter-clockwise, whichever way the lander faces', () => {
    for (const vx of [0.6, -0.6]) {
      const nose = inWorld({ vx, angle: 0.1 }, [0, 0, 1]);
      expect(nose[0]).toBeCloseTo(-Math.sin(0.1), 12);
      expect(nose[1]).toBeCloseTo(0, 12);
    }
  });

  it('turns about the same axis as the section', () => {
    for (const vx of [0.6, -0.6]) {
      const { rates = [0, 0, 0] } = arriving({ vx, angle: 0.1, rate: 0.3 }).state;
      const [x, y, z] = inWorld({ vx, angle: 0.1 }, rates);
      expect([x, y, z].map((rate) => Math.round(rate * 1e9) / 1e9 + 0)).toEqual([0, -0.3, 0]);
    }
  });

  it('says how it ends: a gentle arrival stands, a fast one trips', () => {
    expect(simulateArrival(SETUP, TOUCHDOWN)?.outcome).toBe('upright');
    expect(simulateArrival(SETUP, { ...TOUCHDOWN, vx: 6 })?.outcome).toBe('tipped downhill');
    expect(simulateArrival(SETUP, { ...TOUCHDOWN, vx: -6 })?.outcome).toBe('tipped uphill');
  });

  it('has no answer for a lander that arrives faster than the simulation takes', () => {
    expect(simulateArrival(SETUP, { ...TOUCHDOWN, descentRate: 200 })).toBeUndefined();
  });
});
