import { describe, expect, it } from 'vitest';
import {
  criticalAzimuths,
  hasTipped,
  HIGHEST_FRICTION,
  leastTipLimit,
  prepareTouchdown,
  runTouchdown,
  tipLimit,
  type TouchdownConditions,
  type TouchdownKernel,
} from '../../../engine/touchdown/index.ts';
import { drawRingArrival } from '../../support/ringArrival.ts';
import { plane, shippedLander } from '../../support/touchDown.ts';

const LANDERS = 10;

interface Drawn {
  readonly kernel: TouchdownKernel;
  readonly conditions: TouchdownConditions;
}

/** The arrival of one seed, its lander made ready. */
function draw(seed: number): Drawn {
  const { lander, ...conditions } = drawRingArrival(seed);
  const prepared = prepareTouchdown(lander);
  if (!prepared.ok) throw new Error(JSON.stringify(prepared.error));
  return { kernel: prepared.value, conditions };
}

function tips({ kernel, conditions }: Drawn, speed: number): boolean {
  return [conditions.ground.friction, Math.max(conditions.ground.friction, HIGHEST_FRICTION)].some((friction) =>
    hasTipped(
      runTouchdown(kernel, {
        ...conditions,
        ground: { ...conditions.ground, friction },
        state: { ...conditions.state, horizontalSpeed: speed },
      }),
    ),
  );
}

describe('tip limit of one arrival', () => {
  const drawn = Array.from({ length: LANDERS }, (_, i) => draw(7000 + i));
  const limits = drawn.map(({ kernel, conditions }) => tipLimit(kernel, conditions));

  it('[TD21] stands at the limit and tips within its tolerance above', () => {
    let met = 0;
    limits.forEach(({ speed, tipsAt, tolerance }, i) => {
      if (speed === undefined || tipsAt === undefined || speed === 0) return;
      met++;
      expect(tipsAt - speed).toBeLessThanOrEqual(tolerance);
      expect(tips(drawn[i]!, speed), `lander ${i} at ${speed} m/s`).toBe(false);
      expect(tips(drawn[i]!, tipsAt), `lander ${i} above ${speed} m/s`).toBe(true);
    });
    expect(met).toBeGreaterThan(LANDERS / 2);
  });

  it('[TD21] is 0 where the lander tips without moving across, and absent where it tips at no speed looked at', () => {
    const atOnce = limits.flatMap(({ speed }, i) => (speed === 0 ? [tips(drawn[i]!, 0)] : []));
    const never = limits.flatMap(({ speed, upTo }, i) => (speed === undefined ? [tips(drawn[i]!, upTo)] : []));
    expect(atOnce.length).toBeGreaterThan(0);
    expect(atOnce).not.toContain(false);
    expect(never).not.toContain(true);
  });

  it('[TD21] has no speed below it that tips, at thirty speeds', () => {
    limits.forEach(({ speed = 0 }, i) => {
      for (let n = 1; n < 100; n += 3.3) {
        expect(tips(drawn[i]!, (speed * n) / 100) && speed > 0, `lander ${i} at ${n} % of ${speed} m/s`).toBe(false);
      }
    });
  });
});

/** Steeple's travel toward an azimuth of its own, straight downhill. */
function toward(azimuth: number): TouchdownConditions {
  return {
    gravity: 1.62422,
    ground: plane(0.8, (5 * Math.PI) / 180),
    state: { horizontalSpeed: 0, descentRate: 1.5, yaw: -azimuth },
  };
}

describe('least tip limit', () => {
  const lander = shippedLander('steeple');
  const prepared = prepareTouchdown(lander);
  if (!prepared.ok) throw new Error('Steeple can be simulated');
  const kernel = prepared.value;
  it('[TD22] is not above the limit toward any azimuth given, by more than their tolerance', () => {
    const some = criticalAzimuths(lander).filter((_, i) => i % 4 === 2);
    const speeds = some.map((azimuth) => tipLimit(kernel, toward(azimuth)).speed ?? Infinity);
    const least = leastTipLimit(kernel, some, toward);
    expect(least.speed! - Math.min(...speeds)).toBeLessThanOrEqual(2 * least.tolerance);
    expect(Math.min(...speeds)).toBeLessThan(Math.max(...speeds) - 10 * least.tolerance);
  });

  it('[TD22] is found between the azimuths given, where the worst direction lies there', () => {
    // three feet are left out of what is given: their neighbors stand 15 deg off
    const off = [0.1, 0.1 + (2 * Math.PI) / 3, 0.1 + (4 * Math.PI) / 3];
    const given = Math.min(...off.map((azimuth) => tipLimit(kernel, toward(azimuth)).speed ?? Infinity));
    const least = leastTipLimit(kernel, off, toward);
    expect(least.speed!).toBeLessThan(given - 10 * least.tolerance);
    expect(off).not.toContain(least.tipAzimuth);
    expect(tipLimit(kernel, toward(least.tipAzimuth!)).speed! - least.speed!).toBeLessThanOrEqual(2 * least.tolerance);
  });

  it('[TD22] of a lander that rocks lies in a cleft: toward none of 1440 azimuths does it tip a tolerance below', () => {
    const { kernel: rocking, conditions } = draw(31_000_001);
    const { travelAzimuth = 0 } = conditions.state;
    const turned = (azimuth: number): TouchdownConditions => ({
      ...conditions,
      state: { ...conditions.state, yaw: travelAzimuth - azimuth },
    });
    const critical = criticalAzimuths(drawRingArrival(31_000_001).lander);
    const found = leastTipLimit(rocking, critical, turned);
    const all = Array.from({ length: 1440 }, (_, i) => (i * Math.PI) / 720);
    const below = found.speed! - found.tolerance;
    expect(all.filter((azimuth) => tips({ kernel: rocking, conditions: turned(azimuth) }, below))).toEqual([]);
    // the azimuths given alone, each for itself, say 9 % more
    const given = Math.min(...critical.map((azimuth) => tipLimit(rocking, turned(azimuth)).speed ?? Infinity));
    expect(found.speed!).toBeLessThan(given - 20 * found.tolerance);
  }, 180_000);

  it('[TD22] looks square to every edge and along every foot, which a round number of yaws misses', () => {
    const azimuths = criticalAzimuths(lander);
    // six feet, six edges, and half way between neighbors
    expect(azimuths).toHaveLength(24);
    const six = Array.from({ length: 6 }, (_, i) => (2 * Math.PI * i) / 6);
    const near = (azimuth: number): boolean => six.some((one) => Math.abs(one - azimuth) < 0.02);
    expect(azimuths.filter((azimuth) => !near(azimuth)).length).toBeGreaterThan(12);
  });
});
