import { Rot } from 'planck';
import { describe, expect, it } from 'vitest';

describe('the order of loading', () => {
  it('[PL2] matters: the world refuses a library that was loaded before our sine and cosine', async () => {
    // what a bundler does that moves the library into a chunk of its own
    expect(new Rot(0.3).s).toBeCloseTo(0.29552, 5);
    await expect(import('../../../engine/world/planckWorld.ts')).rejects.toThrow(
      /must be loaded after installDeterministicMath/,
    );
  });
});
