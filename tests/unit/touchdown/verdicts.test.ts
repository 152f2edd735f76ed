import { describe, expect, it } from 'vitest';
import type { BodyPoint } from '../../../engine/lander/lander.ts';
import { seedRandom } from '../../../engine/math/random.ts';
import type { TouchdownResult } from '../../../engine/touchdown/index.ts';
import { ringLander } from '../../support/ringLander.ts';
import { drawConditions, MOON, plane, shippedLander, touchDown } from '../../support/touchDown.ts';

/** A tall body with hull points to fall on. */
const tall = ringLander({
  mass: 2000,
  inertia: [3000, 3000, 1500],
  centerHeight: 2.5,
  legCount: 4,
  radius: 1.8,
  crushForce: 10_000,
  hull: [
    [1, 0, 1],
    [-1, 0, 1],
    [0, 1, 1],
    [0, -1, 1],
    [0, 0, 5],
    [1, 0, 4],
    [-1, 0, 4],
    [0, 1, 4],
    [0, -1, 4],
  ],
});

/** The same on four feet at the corners of a square that lies along the travel. */
const square = ringLander({
  mass: 2000,
  inertia: [3000, 3000, 1500],
  centerHeight: 2.5,
  legCount: 4,
  radius: 1.8,
  firstAzimuth: Math.PI / 4,
  crushForce: 10_000,
});

/** Outcome of a fast arrival flat on a slope. */
function tip(horizontalSpeed: number, slope: number): string {
  const state = { horizontalSpeed, descentRate: 0.5, pitch: slope };
  return touchDown({ lander: tall, gravity: MOON, ground: plane(1, slope), state }).outcome;
}

/** One that leans on foot and hull, on a slope steeper than the friction: the hull points stand out by 2.6 m, `up` above the pads. */
function lying(up: number, timeLimit: number): TouchdownResult {
  const hull = [0, 1, 2, 3].map((n): BodyPoint => [
    2.6 * Math.cos((n * Math.PI) / 2),
    2.6 * Math.sin((n * Math.PI) / 2),
    up,
  ]);
  const pitch = 0.15 + Math.atan2(up, 2.6 - 1.8);
  const ground = plane(0.1, 0.15);
  const state = { horizontalSpeed: 0, descentRate: 0.05, pitch };
  return touchDown({ lander: { ...tall, hull }, gravity: MOON, ground, state }, { timeLimit });
}

describe('verdicts', () => {
  it('[TD11] [TD12] hold when the same touchdown is simulated on to the end', () => {
    const random = seedRandom(11);
    const counts = { tipped: 0, upright: 0 };
    for (const lander of [shippedLander('trivet'), shippedLander('steeple'), tall]) {
      for (let run = 0; run < 25; run++) {
        const conditions = drawConditions(random);
        const early = touchDown({ lander, ...conditions });
        if (early.outcome === 'timed out') continue;
        const late = touchDown({ lander, ...conditions }, { stopWhenDecided: false, timeLimit: 90 });
        const lies = late.restTiltDeg > 45;
        const tipped = early.outcome.startsWith('tipped');
        expect(lies, JSON.stringify(conditions)).toBe(tipped);
        counts[tipped ? 'tipped' : 'upright']++;
      }
    }
    expect(counts.tipped).toBeGreaterThan(15);
    expect(counts.upright).toBeGreaterThan(15);
  });

  it('[TD11] comes well before the body lies on its side', () => {
    const touchdown = {
      lander: tall,
      gravity: MOON,
      ground: plane(1),
      state: { horizontalSpeed: 2.5, descentRate: 1 },
    };
    const early = touchDown(touchdown);
    const late = touchDown(touchdown, { stopWhenDecided: false });
    expect(early.outcome).toBe('tipped downhill');
    expect(late.outcome).toBe('tipped downhill');
    expect(early.time).toBeLessThan(late.time / 2);
    expect(early.restTiltDeg).toBeLessThan(45);
    expect(late.restTiltDeg).toBeGreaterThan(60);
  });

  it('names the direction: downhill, uphill, and along the travel on level ground', () => {
    expect(tip(3, 0.1)).toBe('tipped downhill');
    expect(tip(-3, 0.1)).toBe('tipped uphill');
    expect(tip(3, 0)).toBe('tipped downhill');
    expect(tip(-3, 0)).toBe('tipped downhill');
  });

  it('gives the azimuth in which it tips', () => {
    const result = touchDown({
      lander: tall,
      gravity: MOON,
      ground: plane(1),
      // over the edge between the pads at +x and +y
      state: { horizontalSpeed: 4, descentRate: 0.5, travelAzimuth: Math.PI / 4 },
    });
    expect(result.outcome).toBe('tipped downhill');
    expect(result.tiltAzimuth).toBeCloseTo(Math.PI / 4, 2);
  });

  it('gives the least margin of a lander that stands level: the inner radius of its footprint', () => {
    const result = touchDown({
      lander: tall,
      gravity: MOON,
      ground: plane(1),
      state: { horizontalSpeed: 0, descentRate: 1 },
    });
    expect(result.outcome).toBe('upright');
    expect(result.leastMargin.value).toBeCloseTo(1.8 * Math.SQRT1_2, 9);
  });

  it('gives the margin on a slope: inner radius less height times tan(slope), both along the level', () => {
    const slope = 0.15;
    const result = touchDown({
      lander: square,
      gravity: MOON,
      ground: plane(1, slope),
      state: { horizontalSpeed: 0, descentRate: 0, pitch: slope },
    });
    expect(result.outcome).toBe('upright');
    // seen along gravity, the edge downhill lies b cos(slope) - h sin(slope) from the plumb line
    const expected = 1.8 * Math.SQRT1_2 * Math.cos(slope) - 2.5 * Math.sin(slope);
    expect(Math.abs(result.leastMargin.value - expected)).toBeLessThan(0.01);
  });

  it.each([8, 16, 24])('is none when a budget of %i steps is used up, and not a step more is taken', (maxSteps) => {
    const state = { horizontalSpeed: 1, descentRate: 1 };
    const result = touchDown({ lander: tall, gravity: MOON, ground: plane(1), state }, { maxSteps });
    expect(result).toMatchObject({ outcome: 'timed out', outOfSteps: true, steps: maxSteps });
  });

  it('[TD11] comes in time although a pad of a falling lander hangs over a drop, where it pushes nothing', () => {
    // level ground to 1 m behind the first contact, then 2 m down a steep bank, over which the rear pads come to hang
    const heights = Array.from({ length: 161 }, (_, i) => -Math.max(0, Math.min(2, 4 * (19 - i / 4))));
    const result = touchDown({
      lander: { ...square, hull: [] },
      gravity: MOON,
      ground: {
        shape: { kind: 'profile', terrain: { firstX: -20, spacing: 0.25, heights, friction: 1 } },
        friction: 1,
      },
      state: { horizontalSpeed: 4, descentRate: 0.5 },
    });
    expect(result.outcome).toBe('tipped downhill');
    expect(result.restTiltDeg).toBeLessThan(60);
  });

  it('[TD11] of one that lies far over on foot and hull and slides on is tipped, whenever its time is up', () => {
    const limits = [2, 2.5, 3, 3.5, 4, 4.5, 5];
    expect(limits.map((timeLimit) => lying(3, timeLimit).outcome)).toEqual(limits.map(() => 'tipped downhill'));
    // at least one was only called at the end of its time
    expect(limits.some((timeLimit) => lying(3, timeLimit).time >= timeLimit)).toBe(true);
    // one that leans on its hull by less than 45 deg has not tipped
    expect(lying(0.5, 4).outcome).toBe('timed out');
  });

  it('times out when it slides without end', () => {
    const result = touchDown({
      lander: { ...tall, hull: [] },
      gravity: MOON,
      ground: plane(0.05, 0.2),
      state: { horizontalSpeed: 0, descentRate: 0.3, pitch: 0.2 },
    });
    expect(result.outcome).toBe('timed out');
    expect(result.slide).toBeGreaterThan(10);
  });
});
