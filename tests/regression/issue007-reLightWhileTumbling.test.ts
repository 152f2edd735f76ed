/**
 * Thrust while a lander tumbled with all feet in the air began a new landing, even when its hull met the ground again at once; that was no contact, so the
 * fall was forgotten, and a lander on its back was called upright. A landing now begins anew only after the whole lander has been clear of the ground.
 */
import { describe, expect, it } from 'vitest';
import { createDescent, readDescent, stepDescent, type Descent } from '../../engine/world/index.ts';
import { firstLanding } from '../../levels/index.ts';

/** Trivet just over the ground, too fast sideways. */
function aboutToTrip(vx: number): Descent {
  const { setup } = firstLanding(4);
  const start = { x: 2, y: 2.5, angle: 0, vx, vy: -0.8, rate: 0 };
  return createDescent({ ...setup, start });
}

describe('a lander whose engine burns while it tumbles', () => {
  it('is never called upright when it ends on its back or its side', () => {
    let tumbled = 0;
    for (const vx of [3.04, 3.2, 3.34, 3.5, 3.74, 4.08, 4.4]) {
      const descent = aboutToTrip(vx);
      for (let state = readDescent(descent); state.outcome === undefined; state = readDescent(descent)) {
        // as whoever holds on to the thrust does, once the feet are off the ground
        stepDescent(descent, { thrustPercent: state.height > 0.15 ? 30 : 0, tiltDeg: 0 });
      }
      const { angle, outcome } = readDescent(descent);
      if (Math.cos(angle) > 0.5) continue;
      tumbled += 1;
      expect(outcome, `${vx} m/s, at ${angle} rad`).not.toBe('upright');
    }
    expect(tumbled).toBeGreaterThan(3);
  });
});
