import { beforeAll, describe, expect, it } from 'vitest';
import { tripLimit } from '../../../engine/pivot/index.ts';
import { runTouchdown } from '../../../engine/touchdown/index.ts';
import { bisectLimit } from '../../support/bisectLimit.ts';
import { FOUR_FOOTED, fourFootedThere, squareKernel } from '../../support/fourFootedBody.ts';
import { loadMujocoEngine, mujocoBlock } from '../../support/mujocoBlock.ts';
import type { BodyMotion } from '../../support/MujocoFourFooted.ts';
import { balancingRate, toppleRate } from '../../support/tippingBlock.ts';
import { plane } from '../../support/touchDown.ts';

/**
 * The same rigid bodies in a general-purpose 3-D engine (mujoco-js 0.0.7, MuJoCo 3.3.8) and here with stiff, over-damped legs, at 1.62 m/s^2; limit
 * by bisection in both. Independent in everything: formulation (soft constraints solved for all contacts at once against springs with return
 * mapping), integrator, code.
 */
const GRAVITY = 1.62;
/** Of the legs here: they stand in for a rigid body [N/m]. */
const STIFF = 1e7;

type Mujoco = Awaited<ReturnType<typeof loadMujocoEngine>>;
let mujoco: Mujoco;
beforeAll(async () => {
  mujoco = await loadMujocoEngine();
});

interface Sliding {
  readonly friction: number;
  readonly slope?: number;
  /** Of the travel, from the fall line [rad]. */
  readonly azimuth?: number;
}

function limitHere({ friction, slope = 0, azimuth = 0 }: Sliding): number {
  const kernel = squareKernel(FOUR_FOOTED, STIFF);
  return bisectLimit(1, 4, 11, (speed) => {
    const state = {
      horizontalSpeed: speed * Math.cos(slope),
      descentRate: speed * Math.sin(slope),
      pitch: slope,
      travelAzimuth: azimuth,
    };
    const result = runTouchdown(kernel, { gravity: GRAVITY, ground: plane(friction, slope), state }, { damping: 2 });
    return result.outcome.startsWith('tipped');
  });
}

function limitThere({ friction, slope = 0, azimuth = 0 }: Sliding): number {
  const there = fourFootedThere(mujoco, { friction, gravity: GRAVITY, slope });
  const limit = bisectLimit(1, 4, 11, (speed) =>
    there.falls({ vx: speed * Math.cos(azimuth), vy: speed * Math.sin(azimuth), vz: 0, rate: 0 }),
  );
  there.delete();
  return limit;
}

describe('another engine', () => {
  it('tips a four-footed body over two feet at the same rate, both at the energy formula', () => {
    const { mass, halfStance: b, centerHeight: h, inertia } = FOUR_FOOTED;
    const length = Math.hypot(b, h);
    const exact = Math.sqrt((2 * mass * GRAVITY * (length - h)) / (inertia[1] + mass * length * length));
    const kernel = squareKernel(FOUR_FOOTED, STIFF);
    const here = bisectLimit(0.8 * exact, 1.2 * exact, 12, (rate) => {
      const state = { horizontalSpeed: rate * h, descentRate: -rate * b, rates: [0, rate, 0] as const };
      return runTouchdown(kernel, { gravity: GRAVITY, ground: plane(1), state }).outcome.startsWith('tipped');
    });
    const other = fourFootedThere(mujoco, { friction: 1, gravity: GRAVITY, slope: 0 });
    const motion = (rate: number): BodyMotion => ({ vx: rate * h, vz: rate * b, rate });
    const there = bisectLimit(0.8 * exact, 1.2 * exact, 12, (rate) => other.falls(motion(rate)));
    other.delete();
    // achieved: 1e-4 here, 3.6e-3 there (rolling of its spherical feet)
    expect(Math.abs(here / exact - 1)).toBeLessThan(5e-4);
    expect(Math.abs(there / exact - 1)).toBeLessThan(6e-3);
    expect(Math.abs(here / there - 1)).toBeLessThan(6e-3);
  });

  it('topples a block 4 m wide and 6 m high at the same rate', () => {
    const size = { b: 2, h: 3 };
    const exact = balancingRate(size, GRAVITY);
    const mass = 1000;
    // as in the other engine: 3 m deep, homogeneous; only the moment about y counts
    const inertia = (mass * (size.b ** 2 + size.h ** 2)) / 3;
    const kernel = squareKernel(
      { mass, inertia: [inertia, inertia, inertia], halfStance: size.b, centerHeight: size.h },
      STIFF,
    );
    const here = bisectLimit(0.8 * exact, 1.2 * exact, 12, (rate) => {
      const state = { horizontalSpeed: rate * size.h, descentRate: -rate * size.b, rates: [0, rate, 0] as const };
      return runTouchdown(kernel, { gravity: GRAVITY, ground: plane(2), state }).outcome.startsWith('tipped');
    });
    const there = toppleRate(() => mujocoBlock(mujoco, size, GRAVITY, 500), size, { gravity: GRAVITY, stepRate: 500 });
    expect(Math.abs(here / exact - 1)).toBeLessThan(1e-3);
    expect(Math.abs(here / there - 1)).toBeLessThan(3e-3);
  });

  it.each([
    { friction: 1, slope: 0 },
    { friction: 1.5, slope: 0 },
    { friction: 3, slope: 0 },
    { friction: 1, slope: 0.1 },
    { friction: 3, slope: 0.1 },
  ])('trips a sliding body at the same speed, friction $friction, slope $slope', (sliding) => {
    // achieved: 0.2 to 0.7 %. At friction 1 both slide before they hold, 10 % above the plastic limit, and agree on that too
    expect(Math.abs(limitHere(sliding) / limitThere(sliding) - 1)).toBeLessThan(0.012);
  });

  it.each([5, 10, 15])('trips a body that slides at %i deg to its tip direction at the same speed', (degrees) => {
    const sliding = { friction: 3, azimuth: (degrees * Math.PI) / 180 };
    const here = limitHere(sliding);
    // achieved: 1 % against the other engine, 0.4 % against the closed form for the component across the edge
    expect(Math.abs(here / limitThere(sliding) - 1)).toBeLessThan(0.015);
    const closed = tripLimit({ ...FOUR_FOOTED, inertia: FOUR_FOOTED.inertia[1] }, { gravity: GRAVITY, slope: 0 });
    const across = closed.kind === 'limit' ? closed.plastic.horizontal : Number.NaN;
    expect(Math.abs((here * Math.cos(sliding.azimuth)) / across - 1)).toBeLessThan(0.01);
  });

  it('parts from it by some percent at 25 deg, where it depends on its own step and this one keeps to the closed form', () => {
    const sliding = { friction: 3, azimuth: (25 * Math.PI) / 180 };
    const here = limitHere(sliding);
    const closed = tripLimit({ ...FOUR_FOOTED, inertia: FOUR_FOOTED.inertia[1] }, { gravity: GRAVITY, slope: 0 });
    const across = closed.kind === 'limit' ? closed.plastic.horizontal : Number.NaN;
    expect(Math.abs((here * Math.cos(sliding.azimuth)) / across - 1)).toBeLessThan(0.015);
    expect(limitThere(sliding) / here).toBeGreaterThan(1.03);
    expect(limitThere(sliding) / here).toBeLessThan(1.12);
  });
});
