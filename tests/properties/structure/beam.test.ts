import { describe, expect, it } from 'vitest';
import { nextUniform, seedRandom } from '../../../engine/math/index.ts';
import { beamExtremes, momentAt, shearAt, type BeamLoad } from '../../../engine/structure/beam.ts';
import { onSupports } from '../../../engine/structure/continuousBeam.ts';

/** Forces, line loads and three supports, drawn on a beam of 10 m. */
function drawLoads(random: ReturnType<typeof seedRandom>): readonly BeamLoad[] {
  const between = (low: number, high: number): number => low + (high - low) * nextUniform(random);
  const loads: readonly BeamLoad[] = [
    { kind: 'point', at: between(0, 10), force: between(-5000, 5000) },
    { kind: 'point', at: between(0, 10), force: between(-5000, 0) },
    { kind: 'line', from: between(0, 4), to: between(5, 10), atFrom: between(-3000, 3000), atTo: between(-3000, 3000) },
  ];
  return onSupports(loads, [between(0, 2), between(4, 6), between(8, 10)]);
}

function scaled(load: BeamLoad, k: number): BeamLoad {
  return load.kind === 'point'
    ? { ...load, force: k * load.force }
    : { ...load, atFrom: k * load.atFrom, atTo: k * load.atTo };
}

function mirrored(load: BeamLoad): BeamLoad {
  return load.kind === 'point'
    ? { ...load, at: -load.at }
    : { kind: 'line', from: -load.to, to: -load.from, atFrom: load.atTo, atTo: load.atFrom };
}

function most(values: readonly number[]): number {
  return Math.max(...values.map(Math.abs));
}

describe('a beam', () => {
  it('[SU1] under k times the loads bears k times the moment and shear, at the same places', () => {
    const random = seedRandom(3);
    for (const k of [1e-9, 1e-4, 0.5, 30, 1e6]) {
      const loads = drawLoads(random);
      const { moment, shear } = beamExtremes(loads);
      const other = beamExtremes(loads.map((load) => scaled(load, k)));
      expect(other.moment.value / moment.value / k).toBeCloseTo(1, 9);
      expect(other.shear.value / shear.value / k).toBeCloseTo(1, 9);
      expect(other.moment.at).toBeCloseTo(moment.at, 6);
      expect(other.shear.at).toBeCloseTo(shear.at, 6);
    }
  });

  it('[SU1] bears nowhere more than its extremes, and that much where they are', () => {
    const random = seedRandom(6);
    for (let i = 0; i < 30; i++) {
      const loads = drawLoads(random);
      const { moment, shear } = beamExtremes(loads);
      const places = Array.from({ length: 401 }, (_, place) => place / 40);
      const moments = most(places.map((at) => momentAt(loads, at)));
      const shears = most(places.flatMap((at) => [shearAt(loads, at, false), shearAt(loads, at, true)]));
      expect(moments).toBeLessThanOrEqual(Math.abs(moment.value) * (1 + 1e-9));
      expect(shears).toBeLessThanOrEqual(Math.abs(shear.value) * (1 + 1e-9));
      expect(momentAt(loads, moment.at)).toBe(moment.value);
      expect([shearAt(loads, shear.at, false), shearAt(loads, shear.at, true)]).toContain(shear.value);
    }
  });

  it('[SU1] bears the same in the mirror, shear with the other sign', () => {
    const random = seedRandom(4);
    for (let i = 0; i < 30; i++) {
      const loads = drawLoads(random);
      const { moment, shear } = beamExtremes(loads);
      const other = beamExtremes(loads.map(mirrored));
      expect(other.moment.value / moment.value).toBeCloseTo(1, 9);
      expect(other.moment.at).toBeCloseTo(-moment.at, 6);
      // between two forces it is the same all along, so it has no one place
      expect(other.shear.value / -shear.value).toBeCloseTo(1, 9);
    }
  });
});
