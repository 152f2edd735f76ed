import { describe, expect, it } from 'vitest';
import { rotate } from '../../../engine/math/quaternion.ts';
import { attitudeOf } from '../../../engine/touchdown/attitude.ts';
import { readState } from '../../../server/cli/stateOptions.ts';

describe('a body rate toward the direction of travel', () => {
  it.each([
    [{ yaw: 0, pitch: 0, roll: 0 }, 0],
    [{ yaw: 70, pitch: 0, roll: 0 }, 0],
    [{ yaw: -30, pitch: 40, roll: 0 }, 0],
    [{ yaw: 50, pitch: 20, roll: -60 }, 0],
    [{ yaw: 50, pitch: 20, roll: -60 }, 1.2],
  ])(
    'turns the lander about the level axis to the left of travel, however it is leant: %j, travel %d rad',
    (lean, travel) => {
      const { yaw = 0, pitch = 0, roll = 0, rates = [0, 0, 0] } = readState({ ...lean, rate: 12 }, travel);
      const world = rotate(attitudeOf(yaw, pitch, roll), rates);
      const size = (12 * Math.PI) / 180;
      const wanted = [-Math.sin(travel) * size, Math.cos(travel) * size, 0];
      world.forEach((component, i) => expect(component).toBeCloseTo(wanted[i] ?? Number.NaN, 14));
    },
  );

  it('adds to the rates about its own axes', () => {
    const { rates } = readState({ rate: 2, pitchRate: 3, rollRate: -1, yawRate: 5 }, 0);
    expect(rates?.map((rate) => (rate * 180) / Math.PI)).toEqual([
      expect.closeTo(-1, 12),
      expect.closeTo(5, 12),
      expect.closeTo(5, 12),
    ]);
  });
});
