import { describe, expect, it } from 'vitest';

const platform = { sin: Math.sin, cos: Math.cos, atan2: Math.atan2, tan: Math.tan };
// after the platform's functions have been kept
await import('../../../engine/math/installDeterministicMath.ts');
const { atan2, cos, MAX_ANGLE, sin } = await import('../../../engine/math/trig.ts');

const ANGLES = Array.from({ length: 4001 }, (_, i) => (i - 2000) * 0.37);

describe('installing deterministic math', () => {
  it("[MA9] puts the engine's bits behind Math.sin, Math.cos and Math.atan2, and leaves the rest alone", () => {
    expect(Math.sin).not.toBe(platform.sin);
    expect(Math.tan).toBe(platform.tan);
    expect(ANGLES.map(Math.sin)).toEqual(ANGLES.map(sin));
    expect(ANGLES.map(Math.cos)).toEqual(ANGLES.map(cos));
    expect(ANGLES.map((y) => Math.atan2(y, 3))).toEqual(ANGLES.map((y) => atan2(y, 3)));
  });

  it('[MA9] changes the platform by a last bit here and there, and by no more', () => {
    const differing = ANGLES.filter((angle) => Math.sin(angle) !== platform.sin(angle));
    expect(differing.length).toBeGreaterThan(0);
    const largest = Math.max(...ANGLES.map((angle) => Math.abs(Math.sin(angle) - platform.sin(angle))));
    expect(largest).toBeLessThanOrEqual(2 ** -53);
  });

  it('[MA9] answers every number, as other code of the page expects', () => {
    for (const f of [Math.sin, Math.cos]) expect([f(NaN), f(Infinity), f(-Infinity)]).toEqual([NaN, NaN, NaN]);
    for (const angle of [MAX_ANGLE, -MAX_ANGLE, 1.7e9, 1e15]) {
      const allowed = Math.abs(angle) * 4e-17 + Number.EPSILON;
      expect(Math.abs(Math.sin(angle) - platform.sin(angle))).toBeLessThan(allowed);
      expect(Math.abs(Math.cos(angle) - platform.cos(angle))).toBeLessThan(allowed);
    }
    expect(Math.atan2(NaN, 1)).toBeNaN();
    expect(Math.atan2(Infinity, -Infinity)).toBe(platform.atan2(Infinity, -Infinity));
    expect(Math.atan2(1, Infinity)).toBe(0);
  });
});
