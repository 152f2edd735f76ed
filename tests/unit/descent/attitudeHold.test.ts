import { describe, expect, it } from 'vitest';
import { holdTorque, MAX_TURN_RATE } from '../../../engine/descent/index.ts';

function turn(inertia: number, maxTorque: number, command: number, seconds: number) {
  const dt = 1 / 240;
  let [angle, rate] = [0, 0];
  let [most, fastest, hardest] = [0, 0, 0];
  for (let i = 0; i < seconds / dt; i++) {
    const torque = holdTorque({ inertia, maxTorque }, command - angle, rate);
    rate += (torque / inertia) * dt;
    angle += rate * dt;
    most = Math.max(most, angle);
    fastest = Math.max(fastest, Math.abs(rate));
    hardest = Math.max(hardest, Math.abs(torque));
  }
  return { angle, rate, most, fastest, hardest };
}

describe('attitude hold', () => {
  // from a lander that turns at 0.1 rad/s² to one that turns at 5 rad/s²
  it.each([0.1, 0.25, 0.5, 1, 5])('[DE3] turns by 30 degrees at %d rad/s² without overshooting', (agility) => {
    const command = Math.PI / 6;
    const { angle, rate, most } = turn(1000, 1000 * agility, command, 20);
    expect(angle).toBeCloseTo(command, 6);
    expect(rate).toBeCloseTo(0, 6);
    expect(most).toBeLessThan(command * (1 + 1e-3));
  });

  it('[DE3] asks for no more torque and no faster a turn than stated', () => {
    const { fastest, hardest } = turn(1000, 400, 1, 20);
    expect(hardest).toBeLessThanOrEqual(400);
    expect(fastest).toBeLessThanOrEqual(MAX_TURN_RATE + 1e-12);
  });

  it('[DE3] is the same to either side', () => {
    const body = { inertia: 1500, maxTorque: 300 };
    for (const [error, rate] of [
      [0.3, 0.1],
      [0.01, -0.2],
      [1.5, 0],
    ] as const)
      expect(holdTorque(body, -error, -rate)).toBe(-holdTorque(body, error, rate));
  });
});
