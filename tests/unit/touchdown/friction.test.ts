import { describe, expect, it } from 'vitest';
import { stickShare, withinCone } from '../../../engine/touchdown/friction.ts';

describe('friction', () => {
  it('[FR1] sticks inside the cone, on its rim too', () => {
    expect(stickShare(60, 0.6, 100)).toBe(1);
    expect(stickShare(-60, 0.6, 100)).toBe(1);
  });

  it('[FR1] keeps as much of the stretch as the cone allows beyond it', () => {
    expect(stickShare(120, 0.6, 100)).toBe(0.5);
    expect(stickShare(-240, 0.6, 100)).toBe(0.25);
  });

  it('[FR2] holds nothing without a normal force or without friction', () => {
    expect(stickShare(1, 0.6, 0)).toBe(0);
    expect(stickShare(1, 0.6, -5)).toBe(0);
    expect(stickShare(1, 0, 100)).toBe(0);
  });

  it('[FR3] cuts a force to the cone and keeps its sign', () => {
    expect(withinCone(59, 60)).toBe(59);
    expect(withinCone(61, 60)).toBe(60);
    expect(withinCone(-61, 60)).toBe(-60);
  });
});
