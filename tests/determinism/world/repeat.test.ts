import { describe, expect, it } from 'vitest';
import {
  createDescent,
  hashDescent,
  stepDescent,
  type ControlInput,
  type Descent,
} from '../../../engine/world/index.ts';
import { firstLanding } from '../../../levels/index.ts';

/** A crew with no plan: every control moved now and then, the same way each time. */
function erratic(tick: number): ControlInput {
  return { thrustPercent: (tick * 7) % 60, tiltDeg: ((Math.floor(tick / 40) * 11) % 41) - 20 };
}

function start(seed = 5): Descent {
  return createDescent(firstLanding(seed).setup);
}

describe('the same setup and inputs', () => {
  it('[RE1] give the same bits at every tick, run after run in one process', () => {
    const [first, second] = [start(), start()];
    for (let tick = 0; tick < 2400; tick++) {
      stepDescent(first, erratic(tick));
      stepDescent(second, erratic(tick));
      expect(hashDescent(second)).toBe(hashDescent(first));
    }
    expect(first.touchdown).toBeDefined();
  });

  it('[RE1] give the same bits with other descents stepped in between', () => {
    const alone = start();
    for (let tick = 0; tick < 2400; tick++) stepDescent(alone, erratic(tick));
    const among = start();
    const others = [1, 2, 3].map(start);
    for (let tick = 0; tick < 2400; tick++) {
      for (const other of others) stepDescent(other, erratic(tick + 1));
      stepDescent(among, erratic(tick));
    }
    expect(hashDescent(among)).toBe(hashDescent(alone));
  });

  it('[RE1] give other bits when one input of one tick differs', () => {
    const [first, second] = [start(), start()];
    for (let tick = 0; tick < 600; tick++) {
      stepDescent(first, erratic(tick));
      const input = erratic(tick);
      stepDescent(second, tick === 300 ? { ...input, thrustPercent: input.thrustPercent + 20 } : input);
    }
    expect(hashDescent(second)).not.toBe(hashDescent(first));
  });
});
