import { describe, expect, it } from 'vitest';
import { firstSpeedThat, leastSpeedThatTips, type SpeedSample } from '../../../engine/touchdown/leastSpeed.ts';

const SPEEDS = [0, 1, 2, 3, 4, 5];

/** Tips above `limit` and within the strips given; the margin is the distance from both. */
function ground(limit: number, strips: readonly (readonly [number, number])[] = []): (speed: number) => SpeedSample {
  return (speed) => {
    const clear = Math.min(limit - speed, ...strips.map(([low, high]) => Math.max(low - speed, speed - high)));
    return { tips: clear <= 0, margin: clear };
  };
}

describe('least speed that tips', () => {
  it('lies within the tolerance below where tipping begins', () => {
    const [found] = leastSpeedThatTips(ground(3.3), SPEEDS, 1e-3)!;
    expect(found).toBeGreaterThan(3.3 - 1e-3);
    expect(found).toBeLessThan(3.3);
  });

  it('is 0 when the first speed tips already, and absent when none does', () => {
    expect(leastSpeedThatTips(ground(0), SPEEDS, 1e-3)).toEqual([0, 0]);
    expect(leastSpeedThatTips(ground(9), SPEEDS, 1e-3)).toBeUndefined();
  });

  it('finds a strip between two standing samples by the dip of the margin', () => {
    const [found] = leastSpeedThatTips(ground(4.5, [[2.3, 2.7]]), SPEEDS, 1e-3)!;
    expect(Math.abs(found - 2.3)).toBeLessThan(1e-3);
  });

  it('finds the strip also where nothing above it tips', () => {
    const [found] = leastSpeedThatTips(ground(90, [[2.3, 2.7]]), SPEEDS, 1e-3)!;
    expect(Math.abs(found - 2.3)).toBeLessThan(1e-3);
  });
});

function from(least: number): number | undefined {
  return firstSpeedThat((speed) => speed >= least, SPEEDS, 1e-3)?.[0];
}

describe('first speed at which something happens', () => {
  it('lies within the tolerance below it; 0 when it is the first one asked for, absent when it is none', () => {
    expect(from(1.25)).toBeLessThan(1.25);
    expect(from(1.25)).toBeGreaterThan(1.25 - 1e-3);
    expect(from(0)).toBe(0);
    expect(from(9)).toBeUndefined();
  });
});
