import { beforeAll, describe, expect, it } from 'vitest';
import { massProperties, type Lander } from '../../../engine/lander/index.ts';
import { tripLimit, tripLimitToward } from '../../../engine/pivot/index.ts';
import { landerStance } from '../../../engine/statics/index.ts';
import { hasTipped, prepareTouchdown, runTouchdown, tipLimit } from '../../../engine/touchdown/index.ts';
import type { ContactState, TouchdownKernel } from '../../../engine/touchdown/index.ts';
import { bisectLimit } from '../../support/bisectLimit.ts';
import { loadMujocoEngine } from '../../support/mujocoBlock.ts';
import { MujocoLander } from '../../support/MujocoLander.ts';
import { ringLander } from '../../support/ringLander.ts';
import { MOON, plane, shippedLander } from '../../support/touchDown.ts';

/** Landers on six legs in a general-purpose 3-D engine (mujoco-js 0.0.7, MuJoCo 3.3.8) and here. How it crushes legs: MujocoLander. */
let mujoco: Awaited<ReturnType<typeof loadMujocoEngine>>;
beforeAll(async () => {
  mujoco = await loadMujocoEngine();
});

const DEGREE = Math.PI / 180;

function kernelOf(lander: Lander): TouchdownKernel {
  const prepared = prepareTouchdown(lander);
  if (!prepared.ok) throw new Error(JSON.stringify(prepared.error));
  return prepared.value;
}

/** Steeple on struts that crush along their axis only. */
function steepleWithoutSecondaries(): Lander {
  const steeple = shippedLander('steeple');
  const legs = steeple.legs.map(({ footpad, hip, footpadDiameter, stiffness, stages, bottomedStiffness }) => ({
    footpad,
    hip,
    footpadDiameter,
    stiffness,
    stages,
    bottomedStiffness,
  }));
  return { ...steeple, legs };
}

const BODY = { mass: 6000, inertia: [9000, 9000, 12_000], centerHeight: 2.4 } as const;

describe('six legs in another engine', () => {
  it.each([
    { slope: 0, degrees: 5, apart: 0.012 },
    { slope: 0, degrees: 10, apart: 0.025 },
    { slope: 0, degrees: 15, apart: 0.045 },
    { slope: 0.1, degrees: 5, apart: 0.012 },
    { slope: 0.1, degrees: 10, apart: 0.025 },
    { slope: 0.1, degrees: 15, apart: 0.045 },
  ])('trip at the same speed sliding $degrees deg off, slope $slope', ({ slope, degrees, apart }) => {
    const [radius, gravity, friction] = [2.3, 1.62, 3];
    // an edge of the hexagon square to the fall line; legs that stand in for rigid ones here, feet fixed to the body there
    const legs = {
      legCount: 6,
      radius,
      firstAzimuth: Math.PI / 6,
      crushForce: 1e15,
      stiffness: 1e7,
      bottomedStiffness: 1e7,
    };
    const lander = ringLander({ ...BODY, ...legs });
    const kernel = kernelOf(lander);
    const state = (speed: number): ContactState => along(speed, slope, degrees * DEGREE);
    const here = bisectLimit(1.5, 2.5, 9, (speed) => {
      const conditions = { gravity, ground: plane(friction, slope), state: state(speed) };
      return hasTipped(runTouchdown(kernel, conditions, { damping: 2, only: 'tipping' }));
    });
    const other = new MujocoLander(mujoco, lander, { gravity, slope, friction, step: 0.002 });
    const there = bisectLimit(1.5, 2.5, 9, (speed) => other.tips(state(speed), 12));
    other.delete();
    // achieved: 0.5, 1.4 and 3.2 % on level ground, 0.6, 0.9 and 3.2 % on the slope; it is always the other engine that needs more, the more oblique the
    // more, as with four feet
    expect(Math.abs(here / there - 1)).toBeLessThan(apart);
    const flat = { ...BODY, inertia: BODY.inertia[1], halfStance: radius * Math.cos(Math.PI / 6) };
    const closed = tripLimit(flat, { gravity, slope });
    const across = closed.kind === 'limit' ? closed.plastic.alongGround : Number.NaN;
    // achieved: 0.1, 0.5 and 1.2 % of the closed form for the speed across the edge
    expect(Math.abs((here * Math.cos(degrees * DEGREE)) / across - 1)).toBeLessThan(0.018);
  });

  /**
   * Spring, dashpot and crush force along the strut are the same. Why not equal: across the strut its legs are rigid, here as elastic as along it. With
   * stiff ones here too (a secondary strut of 1e8 N/m that never gives) less is left: below its crush force the dry friction there
   * is a very stiff dashpot, so loaded legs creep, in proportion to the step (at 1 ms by up to 0.006 m more than at 0.5 ms), and its feet have mass.
   */
  it.each([
    { slope: 5, yaw: 30, speed: 0, friction: 0.5, apart: 0.012, stiffApart: 0.005 },
    { slope: 5, yaw: 0, speed: 0, friction: 0.5, apart: 0.025, stiffApart: 0.007 },
    { slope: 8, yaw: 30, speed: 0.5, friction: 0.5, apart: 0.02, stiffApart: 0.018 },
    { slope: 8, yaw: 15, speed: 0.5, friction: 1, apart: 0.045, stiffApart: 0.02 },
  ])(
    'crush alike on $slope deg, yaw $yaw deg, friction $friction',
    ({ slope, yaw, speed, friction, apart, stiffApart }) => {
      const legs = {
        legCount: 6,
        radius: 3,
        crushForce: 20_000,
        stroke: 0.5,
        stiffness: 1.6e6,
        hipInset: 1,
        hipHeight: 2,
      };
      const lander = ringLander({ ...BODY, ...legs });
      const state = { horizontalSpeed: speed, descentRate: 2, yaw: yaw * DEGREE };
      const ground = plane(friction, slope * DEGREE);
      const here = runTouchdown(kernelOf(lander), { gravity: MOON, ground, state });
      const scene = { gravity: MOON, slope: slope * DEGREE, friction, step: 0.0005 };
      const there = new MujocoLander(mujoco, lander, scene);
      const tips = there.tips(state, 6);
      const [strokes, lean] = [there.strokes(), there.lean() / DEGREE];
      there.delete();
      expect(here.outcome).toBe('upright');
      expect(tips).toBe(false);
      const farthest = (other: readonly number[]): number =>
        Math.max(...other.map((stroke, i) => Math.abs(stroke - strokes[i]!)));
      // achieved, legs that crush by 0.03 to 0.13 m: at most 0.007, 0.017, 0.012 and 0.031 m in one leg
      expect(farthest(here.strokes)).toBeLessThan(apart);
      const stiff = ringLander({ ...BODY, ...legs, secondary: { force: 1e12, stroke: 0.1, stiffness: 1e8 } });
      const stiffHere = runTouchdown(kernelOf(stiff), { gravity: MOON, ground, state });
      // achieved: at most 0.003, 0.004, 0.011 and 0.012 m
      expect(farthest(stiffHere.strokes)).toBeLessThan(stiffApart);
      // achieved: +9, +6, +4 and -5 % of all legs together; 0.06, 0.05, 0.26 and 0.25 deg of lean
      expect(Math.abs(sum(strokes) / sum(here.strokes) - 1)).toBeLessThan(0.12);
      expect(Math.abs(lean - here.restTiltDeg)).toBeLessThan(0.45);
    },
  );

  it('tip Steeple on 8 deg far below the closed form, at nearly the same speed', () => {
    const lander = steepleWithoutSecondaries();
    const [slope, friction, yaw] = [8 * DEGREE, 0.8, 30 * DEGREE];
    const arrival = (horizontalSpeed: number): ContactState => ({ horizontalSpeed, descentRate: 1.5, yaw });
    const conditions = { gravity: MOON, ground: plane(friction, slope), state: arrival(0.1) };
    const here = tipLimit(kernelOf(lander), conditions).speed ?? Number.NaN;
    const there = new MujocoLander(mujoco, lander, { gravity: MOON, slope, friction, step: 0.0005 });
    // Achieved: 0.157 m/s here; there between 0.180 and 0.195, and it depends on its step: 0.34 to 0.36 at 2 ms, 0.24 to 0.28 at 1 ms, 0.16 to 0.18 at
    // 0.25 ms. Its legs creep less at a smaller one, see above. The closed form takes feet that land together on rigid legs: 1.319 m/s
    expect(there.tips(arrival(here - 0.03), 16)).toBe(false);
    expect(there.tips(arrival(here + 0.045), 16)).toBe(true);
    there.delete();
    const stance = landerStance(lander);
    if (stance.kind !== 'stands') throw new Error(stance.kind);
    const condition = { gravity: MOON, slope, fallAzimuth: -yaw, descentRate: 1.5, firstContact: 'together' } as const;
    const trip = tripLimitToward(stance, massProperties(lander), condition, -yaw);
    const closed = trip.kind === 'limit' ? trip.plastic.horizontal : Number.NaN;
    expect(here + 0.045).toBeLessThan(closed / 3);
  });
});

function sum(values: readonly number[]): number {
  return values.reduce((total, value) => total + value, 0);
}

/** A slide along the ground of a lander that stands on it, `azimuth` off the fall line. */
function along(speed: number, slope: number, azimuth: number): ContactState {
  const [down, across] = [speed * Math.cos(azimuth), speed * Math.sin(azimuth)];
  return {
    horizontalSpeed: Math.hypot(down * Math.cos(slope), across),
    descentRate: down * Math.sin(slope),
    travelAzimuth: Math.atan2(across, down * Math.cos(slope)),
    pitch: slope,
  };
}
