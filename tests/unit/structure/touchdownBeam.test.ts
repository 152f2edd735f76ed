import { describe, expect, it } from 'vitest';
import { beamExtremes, breakpoints, momentAt, shearAt } from '../../../engine/structure/beam.ts';
import { reactions } from '../../../engine/structure/continuousBeam.ts';
import { lineMass, lineTotals } from '../../../engine/structure/lineMass.ts';
import { pushedBeam, restingBeam, touchdownCases } from '../../../engine/structure/touchdownBeam.ts';
import { layOnSide } from '../../../engine/structure/layOnSide.ts';
import { massProperties } from '../../../engine/lander/index.ts';
import { findLander } from '../../../levels/index.ts';

const MASSES = [
  { from: 0, to: 6, mass: 900 },
  { from: 2, to: 2, mass: 400 },
  { from: 5, to: 9, mass: 1600 },
];
const STATIONS = [
  { at: 1, force: 9000 },
  { at: 4.5, force: 12_000 },
  { at: 8, force: 9000 },
];

describe('a body that lies on its legs', () => {
  it('[SU3] is in equilibrium with its own inertia: shear and moment vanish beyond both ends', () => {
    for (const pushes of [STATIONS, STATIONS.slice(0, 1), STATIONS.slice(1)]) {
      const loads = pushedBeam(MASSES, pushes);
      const largest = Math.abs(beamExtremes(loads).moment.value);
      expect(largest).toBeGreaterThan(1000);
      expect(Math.abs(momentAt(loads, 9)) / largest).toBeLessThan(1e-12);
      expect(Math.abs(shearAt(loads, 9, true))).toBeLessThan(1e-8);
    }
  });

  it('[SU1] has its largest moment and shear nowhere exceeded along the body', () => {
    const loads = pushedBeam(MASSES, STATIONS.slice(0, 2));
    const { moment, shear } = beamExtremes(loads);
    for (let i = 0; i <= 3000; i++) {
      const y = (i / 3000) * 9;
      expect(Math.abs(momentAt(loads, y))).toBeLessThanOrEqual(Math.abs(moment.value) * (1 + 1e-12));
      expect(Math.abs(shearAt(loads, y, false))).toBeLessThanOrEqual(Math.abs(shear.value) * (1 + 1e-12));
    }
    expect(breakpoints(loads)).toEqual([0, 1, 2, 4.5, 5, 6, 9]);
  });

  it('[SU1] has them in the right place and size however small its loads: half the push at mid-span, its half times the arm', () => {
    // a light rod of 2 m on two ends, pushed down by 1 mN at its middle: V = F/2, M = F L/4
    const { moment, shear } = beamExtremes([
      { kind: 'point', at: 0, force: 0.5e-3 },
      { kind: 'point', at: 1, force: -1e-3 },
      { kind: 'point', at: 2, force: 0.5e-3 },
    ]);
    expect(Math.abs(shear.value)).toBeCloseTo(0.5e-3, 15);
    expect(Math.abs(moment.value)).toBeCloseTo(0.5e-3, 15);
    expect(moment.at).toBe(1);
    expect(beamExtremes([])).toEqual({ moment: { value: 0, at: 0 }, shear: { value: 0, at: 0 } });
  });

  it('[SU2] hands its weight to its stations at rest, in balance', () => {
    const loads = restingBeam(MASSES, [1, 4.5, 8], 1.62);
    const { mass, center } = lineTotals(MASSES);
    const held = loads.flatMap((load) => (load.kind === 'point' && load.force > 0 ? [load] : []));
    expect(held).toHaveLength(3);
    expect(held.reduce((sum, { force }) => sum + force, 0)).toBeCloseTo(mass * 1.62, 8);
    expect(held.reduce((sum, { force, at }) => sum + force * at, 0)).toBeCloseTo(mass * 1.62 * center, 7);
  });

  it('[SU3] names its cases; gravity enters only the one at rest', () => {
    const onMoon = touchdownCases(MASSES, STATIONS, 1.62);
    const onMars = touchdownCases(MASSES, STATIONS, 3.73);
    const names = ['all stations', 'first station alone', 'last station alone', 'ends only', 'middle only', 'at rest'];
    expect(onMoon.map(({ name }) => name)).toEqual(names);
    expect(onMars.slice(0, -1)).toEqual(onMoon.slice(0, -1));
    expect(onMars.at(-1)?.moment.value).toBeCloseTo(((onMoon.at(-1)?.moment.value ?? 0) * 3.73) / 1.62, 6);
    const two = touchdownCases(MASSES, [STATIONS[0]!, STATIONS[2]!], 1.62).map(({ name }) => name);
    expect(two).toEqual(['all stations', 'first station alone', 'last station alone', 'at rest']);
  });

  it('[SU3] has all the mass of its lander along its length, with its center', () => {
    for (const id of ['bolster', 'steeple']) {
      const lander = findLander(id);
      if (lander === undefined) throw new Error(`no ${id}`);
      const body = id === 'bolster' ? lander : layOnSide(lander);
      const bulk = massProperties(body);
      const { mass, center } = lineTotals(lineMass(body, 'y'));
      expect(mass / bulk.mass).toBeCloseTo(1, 12);
      expect(center).toBeCloseTo(bulk.center[1], 10);
    }
  });

  it('refuses one station, or two at one place', () => {
    expect(() => touchdownCases(MASSES, STATIONS.slice(0, 1), 1.62)).toThrow(/two stations/);
    expect(() => reactions([], [1, 1])).toThrow(/two places/);
  });
});
