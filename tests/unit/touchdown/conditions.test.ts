import { describe, expect, it } from 'vitest';
import type { TouchdownCase } from '../../../engine/touchdown/index.ts';
import { MOON, plane, touchDown } from '../../support/touchDown.ts';
import { ringLander } from '../../support/ringLander.ts';

const SHAPE = {
  mass: 2000,
  inertia: [2000, 2000, 2500],
  centerHeight: 1.5,
  legCount: 4,
  radius: 2,
  crushForce: 10_000,
  stroke: 0.3,
} as const;
const lander = ringLander(SHAPE);

function straightDown(descentRate: number, changes: Partial<TouchdownCase> = {}): TouchdownCase {
  return { lander, gravity: MOON, ground: plane(0.7), state: { horizontalSpeed: 0, descentRate }, ...changes };
}

describe('legs', () => {
  it('[TD13] are used up one after the other in a hard landing, which is an overload', () => {
    const result = touchDown(straightDown(4));
    expect(result.outcome).toBe('overloaded');
    expect(result.limitsHit).toContain('crush exhausted');
    expect(result.strokesUsed).toEqual([1, 1, 1, 1]);
    expect(Math.min(...result.peakLoads)).toBeGreaterThan(10_000);
  });

  it('[TD3] never carry more than the crush force while there is stroke left', () => {
    for (const yaw of [0.1, 0.5, 0.9]) {
      const result = touchDown(
        straightDown(2, {
          ground: plane(0.9, 0.15),
          state: { horizontalSpeed: 1, descentRate: 2, yaw, pitch: 0.1, rates: [0.2, 0, 0.1] },
        }),
      );
      expect(result.limitsHit).toEqual([]);
      for (const load of result.peakLoads) expect(load).toBeLessThanOrEqual(10_000 * (1 + 2e-8));
      result.strokesUsed.forEach((used, leg) => expect(used).toBeCloseTo(result.strokes[leg]! / 0.3, 12));
      expect(Math.max(...result.peakLoads)).toBeGreaterThan(9999);
    }
  });

  it('[TD14] that are missing leave the others to carry, and the lander falls to that side', () => {
    const result = touchDown(straightDown(1, { legs: [{ leg: 0, kind: 'missing' }] }));
    expect(result.strokes[0]).toBe(0);
    expect(result.peakLoads[0]).toBe(0);
    // the plumb line is on the edge between legs 1 and 3; it does not stand
    expect(result.leastMargin.value).toBeLessThan(1e-6);
  });

  it('[TD14] that are soft crush farther', () => {
    const result = touchDown(straightDown(2, { legs: [{ leg: 2, kind: 'soft', factor: 0.5 }] }), { timeLimit: 0.5 });
    expect(result.peakLoads[2]).toBeCloseTo(5000, 2);
    expect(result.strokes[2]!).toBeGreaterThan(1.2 * result.strokes[0]!);
  });

  it('[TD14] that are not latched fold at a twentieth of their force, without end and without overload', () => {
    const result = touchDown(straightDown(1, { legs: [{ leg: 2, kind: 'not latched' }] }), { timeLimit: 1 });
    expect(result.peakLoads[2]).toBeCloseTo(500, 3);
    expect(result.limitsHit).not.toContain('crush exhausted');
    expect(result.strokes[2]!).toBeGreaterThan(0.1);
  });

  it('[TD14] that have folded over their own length are gone: a tripod lies down over them', () => {
    const tripod = ringLander({ ...SHAPE, legCount: 3 });
    const { history, ...result } = touchDown(
      straightDown(1, { lander: tripod, legs: [{ leg: 0, kind: 'not latched' }] }),
      { stopWhenDecided: false, timeLimit: 6, historyEvery: 8 },
    );
    // hip 1.5 m above the pad
    const folded = history!.filter(({ strokes }) => strokes[0]! >= 1.5 - 1e-9);
    expect(folded.length).toBeGreaterThan(10);
    expect(folded.filter(({ loads }) => loads[0] !== 0)).toEqual([]);
    expect(result.outcome).toMatch(/^tipped/);
    expect(Math.abs(result.tiltAzimuth)).toBeLessThan(1e-6);
  });

  it('lean the lander when the secondary struts let the pads spread', () => {
    const spread = ringLander({
      ...SHAPE,
      hipInset: 1,
      secondary: { force: 3000, stroke: 0.3, stiffness: 1e6 },
      stiffness: 1e6,
    });
    const result = touchDown(straightDown(2, { lander: spread }));
    expect(Math.max(...result.lateralUsed)).toBeGreaterThan(0.1);
    expect(result.outcome).toBe('upright');
  });
});

describe('ground', () => {
  it('[TD15] leans the lander over a rock by its height over the distance to the opposite pad', () => {
    const result = touchDown(straightDown(0, { ground: { ...plane(1), underPad: [{ leg: 0, height: 0.2 }] } }), {
      stopWhenDecided: false,
    });
    // on pads 0, 1 and 3, or rocking to 2: the lean is between the two faces
    expect(result.restTiltDeg).toBeGreaterThan(1);
    expect(result.restTiltDeg).toBeLessThan((Math.asin(0.2 / 2) * 180) / Math.PI + 0.1);
    expect(result.outcome).toBe('upright');
  });

  it('[TD15] leans a three-legged lander into a hole by exactly its depth over its height', () => {
    const tripod = ringLander({ ...SHAPE, legCount: 3, crushForce: 1e6 });
    const result = touchDown(
      straightDown(0, { lander: tripod, ground: { ...plane(1), underPad: [{ leg: 0, height: -0.15 }] } }),
      { stopWhenDecided: false },
    );
    // pad 0 lies 1.5 radii from the line of the other two
    expect(Math.abs(result.restTiltDeg - (Math.asin(0.15 / 3) * 180) / Math.PI)).toBeLessThan(0.02);
    expect(Math.abs(result.tiltAzimuth)).toBeLessThan(1e-3);
  });

  it('[TD16] that meets the hull is listed as clearance', () => {
    const low = ringLander({ ...SHAPE, hull: [[0, 0, 0.1]] });
    const result = touchDown(straightDown(2, { lander: low }));
    expect(result.limitsHit).toContain('clearance');
    expect(result.clearance).toBeLessThanOrEqual(0);
    const high = touchDown(straightDown(2, { lander: ringLander({ ...SHAPE, hull: [[0, 0, 0.5]] }) }));
    expect(high.limitsHit).toEqual([]);
    expect(high.clearance).toBeGreaterThan(0.2);
    // the hull comes down by the stroke and the give of the legs
    expect(Math.abs(high.clearance - (0.5 - high.strokes[0]!))).toBeLessThan(0.02);
  });

  it('[TD20] as a profile of the same slope gives what the plane gives', () => {
    const slope = 0.12;
    const state = { horizontalSpeed: 1, descentRate: 1.5, yaw: 0.3, pitch: 0.05, travelAzimuth: 0 };
    const heights = Array.from({ length: 41 }, (_, i) => -(i - 20) * 5 * Math.tan(slope));
    const terrain = { firstX: -100, spacing: 5, heights, friction: 0 };
    const options = { timeLimit: 1, stopWhenDecided: false };
    const onPlane = touchDown(straightDown(0, { ground: plane(0.8, slope), state }), options);
    const onProfile = touchDown(
      straightDown(0, { ground: { shape: { kind: 'profile', terrain }, friction: 0.8 }, state }),
      options,
    );
    expect(onPlane.strokes[0]!).toBeGreaterThan(0.01);
    onPlane.strokes.forEach((stroke, i) => expect(onProfile.strokes[i]!).toBeCloseTo(stroke, 5));
    expect(onProfile.leastMargin.value).toBeCloseTo(onPlane.leastMargin.value, 5);
    expect(onProfile.restTiltDeg).toBeCloseTo(onPlane.restTiltDeg, 3);
    expect(onProfile.slide).toBeCloseTo(onPlane.slide, 5);
  });

  it('as a V-shaped profile lets the lander stand astride its middle', () => {
    const terrain = { firstX: -10, spacing: 10, heights: [1, 0, 1], friction: 0 };
    const result = touchDown(
      straightDown(1, {
        ground: { shape: { kind: 'profile', terrain }, friction: 0.8 },
        state: { horizontalSpeed: 0, descentRate: 1, yaw: Math.PI / 4 },
      }),
    );
    expect(result.outcome).toBe('upright');
    expect(result.restTiltDeg).toBeLessThan(0.5);
  });
});

describe('thrust and thrusters', () => {
  it('[TD17] thrust up to cut-off carries its part: with weight balanced the lander goes on at its speed', () => {
    const result = touchDown(
      straightDown(1, {
        state: { horizontalSpeed: 0, descentRate: 1, height: 2 },
        thrust: { thrust: 2000 * MOON, cutoffDelay: 0 },
      }),
    );
    expect(Math.abs(result.firstContact - 2)).toBeLessThan(2 * result.step);
  });

  it('[TD17] thrust falls off to 1/e in its time constant: the impulse after cut-off is thrust times it', () => {
    const options = { timeLimit: 0.4, stopWhenDecided: false, ledger: true };
    const without = touchDown(straightDown(2), options);
    const [slow, quick] = [0.2, 0.02].map((timeConstant) =>
      touchDown(straightDown(2, { thrust: { thrust: 3000, timeConstant } }), options),
    );
    expect(slow!.strokes[0]!).toBeLessThan(quick!.strokes[0]!);
    expect(quick!.strokes[0]!).toBeLessThan(without.strokes[0]!);
    expect(slow!.ledger!.thrustWork).toBeLessThan(0);
  });

  it('[TD17] thrust with no time to fall off in is gone at once', () => {
    const options = { timeLimit: 0.4, stopWhenDecided: false };
    const without = touchDown(straightDown(2), options);
    const cut = touchDown(straightDown(2, { thrust: { thrust: 3000, timeConstant: 0 } }), options);
    expect(without.strokes[0]!).toBeGreaterThan(0.05);
    expect(Math.abs(cut.strokes[0]! / without.strokes[0]! - 1)).toBeLessThan(0.01);
  });

  it('[TD17] thrust along the axis turns a lander whose center of mass lies beside it: torque over inertia', () => {
    const offset = ringLander({ ...SHAPE, inertia: [900, 1700, 2300], center: [0.2, -0.1, 1.5] });
    const [thrust, timeLimit] = [1000, 0.05];
    const { history } = touchDown(
      straightDown(0, {
        lander: offset,
        thrust: { thrust, cutoffDelay: 9 },
        state: { horizontalSpeed: 0, descentRate: 0, height: 5 },
      }),
      { timeLimit, stopWhenDecided: false, historyEvery: 1 },
    );
    const { rates, time } = history!.at(-1)!;
    // (-0.2, 0.1, 0) x (0, 0, F) = (0.1 F, 0.2 F, 0)
    expect(time).toBeGreaterThan(0.04);
    expect(rates[0] / ((0.1 * thrust * time) / 900)).toBeCloseTo(1, 4);
    expect(rates[1] / ((0.2 * thrust * time) / 1700)).toBeCloseTo(1, 4);
    expect(Math.abs(rates[2])).toBeLessThan(1e-6);
  });

  it('[TD17] thrusters hold a lander that would tip', () => {
    const tall = ringLander({ ...SHAPE, centerHeight: 3, radius: 1.2 });
    const strong = { ...tall, engine: { ...tall.engine, attitudeTorque: 3000 } };
    const arrival = {
      lander: strong,
      gravity: MOON,
      ground: plane(1),
      state: { horizontalSpeed: 1.1, descentRate: 0.5 },
    };
    expect(touchDown(arrival).outcome).toBe('tipped downhill');
    expect(touchDown({ ...arrival, hold: { duration: 20 } }).outcome).toBe('upright');
  });
});

describe('load limits', () => {
  it('count as overload when they are passed', () => {
    expect(touchDown(straightDown(2)).outcome).toBe('upright');
    const leg = touchDown(straightDown(2, { loadLimits: { legLoad: 9000 } }));
    expect(leg.outcome).toBe('overloaded');
    expect(leg.limitsHit).toEqual(['load']);
    expect(touchDown(straightDown(2, { loadLimits: { acceleration: 19 } })).limitsHit).toEqual(['load']);
    expect(touchDown(straightDown(2, { loadLimits: { acceleration: 21 } })).limitsHit).toEqual([]);
  });
});

describe('time', () => {
  it('[TD12] runs out for a fall only after it has come down, however long that takes', () => {
    // a fall of 35 s, where a center of mass 0.3 m high has 17 s to come to a verdict
    const low = ringLander({ ...SHAPE, centerHeight: 0.3 });
    const state = { horizontalSpeed: 0, descentRate: 0, height: 1000 };
    const result = touchDown(straightDown(0, { lander: low, state }));
    expect(result.firstContact).toBeCloseTo(Math.sqrt(2000 / MOON), 1);
  });
});
