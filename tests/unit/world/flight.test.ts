import { describe, expect, it } from 'vitest';
import type { Lander } from '../../../engine/lander/index.ts';
import { createDescent, readDescent, stepDescent, TICK_DT } from '../../../engine/world/index.ts';
import { COAST, evenGround, MOON } from '../../support/dropLander.ts';
import { plainLander } from '../../support/plainLander.ts';

function high(lander: Lander, propellant = 0, start: { vx?: number; vy?: number; angle?: number; rate?: number } = {}) {
  return createDescent({
    lander,
    gravity: MOON,
    terrain: evenGround(),
    start: { x: 0, y: 5000, angle: 0, vx: 0, vy: 0, rate: 0, ...start },
    propellant,
  });
}

describe('flight', () => {
  it('[PL4] falls on the exact parabola', () => {
    const descent = high(plainLander(), 0, { vx: 3, vy: -4 });
    for (let i = 0; i < 600; i++) stepDescent(descent, COAST);
    const { x, y, vx, vy } = readDescent(descent);
    // 10 s without thrust: x = v t, y = y0 + v t − ½ g t², to rounding
    expect(x).toBeCloseTo(30, 9);
    expect(y).toBeCloseTo(5000 - 40 - 0.5 * MOON * 100, 8);
    expect(vx).toBeCloseTo(3, 12);
    expect(vy).toBeCloseTo(-4 - MOON * 10, 10);
  });

  it('[PL4] gains the speed that the rocket equation gives', () => {
    // [check table] Δv = Isp g0 ln(m0/m1), straight up against gravity, no lag
    const lander = plainLander({ mass: 1500, propellant: 500, lag: 0, maxThrust: 12_000 });
    const descent = high(lander, 500);
    const start = readDescent(descent).mass;
    expect(start).toBeCloseTo(2000, 9);
    for (let i = 0; i < 1200; i++) stepDescent(descent, { thrustPercent: 100, tiltDeg: 0 });
    const { vy, mass, propellant } = readDescent(descent);
    const burned = (12_000 * 20) / (311 * 9.80665);
    expect(propellant).toBeCloseTo(500 - burned, 9);
    expect(mass).toBeCloseTo(start - burned, 9);
    const expected = 311 * 9.80665 * Math.log(start / mass) - MOON * 20;
    expect(Math.abs(vy / expected - 1)).toBeLessThan(1e-9);
  });

  it('[PL4] follows a command with the lag of the engine', () => {
    const lander = plainLander({ propellant: 100, lag: 0.2, maxThrust: 10_000 });
    const descent = high(lander, 100);
    for (let i = 0; i < 12; i++) stepDescent(descent, { thrustPercent: 50, tiltDeg: 0 });
    // one lag after the command: 1 − 1/e of it
    expect(readDescent(descent).thrust).toBeCloseTo(5000 * (1 - Math.exp(-1)), 9);
    // and the impulse so far F (t - lag (1 - 1/e)) = F lag / e at t = lag, by what it burned
    const burned = (5000 * 0.2 * Math.exp(-1)) / (311 * 9.80665);
    expect((100 - readDescent(descent).propellant) / burned).toBeCloseTo(1, 9);
  });

  it('[PL12] burns at its minimum when commanded less, and says so', () => {
    const descent = high(plainLander({ propellant: 100, lag: 0, maxThrust: 10_000, minThrust: 2350 }), 100);
    stepDescent(descent, { thrustPercent: 7, tiltDeg: 0 });
    const state = readDescent(descent);
    // 23.5 % is the least: the least whole percent is 24
    expect(state.commanded).toEqual({ thrustPercent: 24, tiltDeg: 0 });
    expect(state.thrust).toBe(2400);
    stepDescent(descent, COAST);
    expect(readDescent(descent)).toMatchObject({ thrust: 0, commanded: { thrustPercent: 0 } });
  });

  it('[PL4] shuts down for good when the tanks are empty, and says so once', () => {
    const descent = high(plainLander({ propellant: 2, lag: 0.1, maxThrust: 12_000 }), 2);
    const events = Array.from({ length: 300 }, () => [
      ...stepDescent(descent, { thrustPercent: 80, tiltDeg: 0 }),
    ]).flat();
    expect(events.filter(({ kind }) => kind === 'propellantOut')).toHaveLength(1);
    expect(readDescent(descent)).toMatchObject({ propellant: 0, thrust: 0, commanded: { thrustPercent: 0 } });
    // every kilogram was used: m·Δv is nearly Isp g0 times 2 kg
    expect(readDescent(descent).vy + MOON * 5).toBeCloseTo(311 * 9.80665 * Math.log(2002 / 2000), 6);
  });

  it('[PL4] turns to a commanded tilt without overshooting and stays there', () => {
    const descent = high(plainLander(), 0);
    let most = 0;
    for (let i = 0; i < 600; i++) {
      stepDescent(descent, { thrustPercent: 0, tiltDeg: -20 });
      most = Math.min(most, readDescent(descent).angle);
    }
    const { angle, rate } = readDescent(descent);
    expect(angle).toBeCloseTo((-20 * Math.PI) / 180, 4);
    expect(rate).toBeCloseTo(0, 4);
    expect(most).toBeGreaterThanOrEqual((-20 * Math.PI) / 180 - 1e-6);
  });

  it('[PL4] keeps the motion of its material while the center of mass moves with the propellant', () => {
    // a tank high above the dry center: burning lowers the center of mass, thrusters off
    const lander: Lander = {
      ...plainLander({ mass: 1000, propellant: 1000, maxThrust: 12_000, lag: 0 }),
      engine: { maxThrust: 12_000, minThrust: 0, specificImpulse: 60, lag: 0, attitudeTorque: 1e-9 },
      tanks: [
        {
          name: 'high',
          orientation: 'upright',
          radius: 0.6,
          length: 1,
          bottomHeight: 5,
          offset: [0, 0],
          fill: 1,
          density: 1000 / (Math.PI * 0.36),
        },
      ],
    };
    const descent = high(lander, 1000, { rate: 0.2 });
    const before = descent.bulk.centerHeight;
    for (let i = 0; i < 300; i++) stepDescent(descent, { thrustPercent: 100, tiltDeg: 0 });
    expect(before - descent.bulk.centerHeight).toBeGreaterThan(0.1);
    // no torque acts: the rate stays, and the position is still where the velocity says
    expect(descent.motion.rate).toBeCloseTo(0.2, 9);
    const [{ x, y }, { vx, vy }] = [{ ...descent.motion }, descent.motion];
    stepDescent(descent, COAST);
    expect(descent.motion.x - x).toBeCloseTo(vx * TICK_DT, 9);
    expect(descent.motion.y - y).toBeCloseTo(vy * TICK_DT - 0.5 * MOON * TICK_DT * TICK_DT, 9);
  });

  it('[PL13] refuses a start or an input that is no number', () => {
    expect(() => high(plainLander(), 0, { vx: Number.NaN })).toThrow(/start is finite/);
    const descent = high(plainLander({ propellant: 10 }), 10);
    expect(() => stepDescent(descent, { thrustPercent: Number.NaN, tiltDeg: 0 })).toThrow(/Broken contract/);
    const other = high(plainLander(), 0);
    expect(() => stepDescent(other, { thrustPercent: 0, tiltDeg: Number.NaN })).toThrow(/Broken contract/);
  });
});
