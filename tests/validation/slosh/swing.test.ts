import { describe, expect, it } from 'vitest';
import { AT_REST, lateralMode, stepSwing, swingSize, type Swing } from '../../../engine/slosh/index.ts';
import { attitudeAt, type TurningBody } from '../../support/turningBody.ts';

const STEP = 1 / 60;

/**
 * `newton`: of the largest angle, against a pendulum integrated apart from this engine without leaving out terms of second order: turns of a hundredth of a
 * radian leave out some 1e-4 of it. Achieved 2.3e-4. `closed`: closed forms that the method takes exactly.
 */
const TOLERANCE = { newton: 5e-4, closed: 1e-10 } as const;

const still = (along: number) => ({ across: 0, along, rateChange: 0 });

function steps(swing: Swing, count: number, along: number, damping: number, length: number): Swing {
  let now = swing;
  for (let i = 0; i < count; i += 1) now = stepSwing(now, { length, hingeAbove: 0, damping }, still(along), STEP);
  return now;
}

describe('the swing of a liquid in flight', () => {
  it('[SL10] left alone comes round 0.65959 times a second in a tank of R = h = 1 m under 9.81 m/s² [Abramson1966]', () => {
    const { pendulumLength } = lateralMode({ radius: 1, depth: 1 }, 1);
    let [before, crossings] = [{ angle: 0.05, rate: 0 }, 0];
    const seconds = 100;
    for (let i = 0; i < seconds / STEP; i += 1) {
      const now = steps(before, 1, 9.81, 0, pendulumLength);
      if (before.angle <= 0 && now.angle > 0) crossings += 1;
      before = now;
    }
    expect(crossings).toBe(Math.floor(0.65959 * seconds + 0.25));
    // and is, after whole periods of the published figure, back where it was
    const back = stepSwing(
      { angle: 0.05, rate: 0 },
      { length: pendulumLength, hingeAbove: 0, damping: 0 },
      still(9.81),
      10 / 0.65959,
    );
    expect(Math.abs(back.angle - 0.05)).toBeLessThan(1e-6);
  });

  it.each([0.01, 0.03, 0.3])('[SL10] dies out by e^(−2πζ/√(1−ζ²)) each time it comes round, at ζ %d', (damping) => {
    const [along, length] = [1.62, 0.222];
    const period = (2 * Math.PI) / Math.sqrt((along / length) * (1 - damping * damping));
    const once = stepSwing({ angle: 0.1, rate: 0 }, { length, hingeAbove: 0, damping }, still(along), period);
    const expected = 0.1 * Math.exp((-2 * Math.PI * damping) / Math.sqrt(1 - damping * damping));
    expect(Math.abs(once.angle / expected - 1)).toBeLessThan(TOLERANCE.closed);
    expect(Math.abs(once.rate)).toBeLessThan(TOLERANCE.closed);
  });

  it('[SL10] hangs along what is felt: pushed aside for long it comes to rest at that angle', () => {
    let now = AT_REST;
    for (let i = 0; i < 6000; i += 1)
      now = stepSwing(
        now,
        { length: 0.3, hingeAbove: 1, damping: 0.1 },
        { across: 0.2, along: 2, rateChange: 0 },
        STEP,
      );
    expect(now.angle).toBeCloseTo(-0.1, 9);
    expect(swingSize(now, 0.3, { across: 0.2, along: 2, rateChange: 0 })).toBeLessThan(1e-8);
  });

  it.each([
    ['below', -0.3],
    ['at', 0],
    ['far above', 2.4],
  ])(
    '[SL10] in a hovering body that turns, with the hinge %s its center of mass, goes as Newton has it',
    (_, hingeAbove) => {
      const body: TurningBody = { size: 0.005, pace: 1.1 };
      const length = 0.222;
      const reference = byNewton(body, { hingeAbove, length, gravity: 1.62 });
      let now = AT_REST;
      let most = 0;
      let worst = 0;
      for (let i = 1; i <= 600; i += 1) {
        const rateChange = attitudeAt(body, i * STEP).rate - attitudeAt(body, (i - 1) * STEP).rate;
        now = stepSwing(now, { length, hingeAbove, damping: 0 }, { across: 0, along: 1.62, rateChange }, STEP);
        const expected = reference[i] ?? Number.NaN;
        most = Math.max(most, Math.abs(expected));
        worst = Math.max(worst, Math.abs(now.angle - expected));
      }
      expect(most).toBeGreaterThan(0.001);
      expect(worst / most).toBeLessThan(TOLERANCE.newton);
    },
  );
});

/** Angle to the body's axis at each sixtieth of a second: the point mass in the ground's frame, its hinge carried along, every term kept, by Runge and Kutta. */
function byNewton(
  body: TurningBody,
  { hingeAbove, length, gravity }: { readonly hingeAbove: number; readonly length: number; readonly gravity: number },
): readonly number[] {
  const parts = 20;
  const step = STEP / parts;
  // the rod's own angle to the vertical, and its rate
  const change = (time: number, [angle, rate]: readonly [number, number]): readonly [number, number] => {
    const at = attitudeAt(body, time);
    const [s, c] = [Math.sin(at.angle), Math.cos(at.angle)];
    // the center of mass is pushed along the axis by as much as gravity pulls; the hinge goes round it
    const right = -gravity * s + hingeAbove * (-c * at.change + s * at.rate ** 2);
    const up = gravity * c - gravity + hingeAbove * (-s * at.change - c * at.rate ** 2);
    return [rate, -(right * Math.cos(angle) + (up + gravity) * Math.sin(angle)) / length];
  };
  let now: [number, number] = [0, attitudeAt(body, 0).rate];
  const angles = [0];
  for (let i = 0; i < 600 * parts; i += 1) {
    const time = i * step;
    const one = change(time, now);
    const two = change(time + step / 2, ahead(now, one, step / 2));
    const three = change(time + step / 2, ahead(now, two, step / 2));
    const four = change(time + step, ahead(now, three, step));
    now = [
      now[0] + (step / 6) * (one[0] + 2 * two[0] + 2 * three[0] + four[0]),
      now[1] + (step / 6) * (one[1] + 2 * two[1] + 2 * three[1] + four[1]),
    ];
    if ((i + 1) % parts === 0) angles.push(now[0] - attitudeAt(body, time + step).angle);
  }
  return angles;
}

function ahead(from: readonly [number, number], by: readonly [number, number], span: number): [number, number] {
  return [from[0] + span * by[0], from[1] + span * by[1]];
}
