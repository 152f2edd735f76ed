import { describe, expect, it } from 'vitest';
import { beamExtremes, momentAt, shearAt, type BeamLoad } from '../../../engine/structure/beam.ts';
import { onSupports, reactions } from '../../../engine/structure/continuousBeam.ts';
import { pushedBeam } from '../../../engine/structure/touchdownBeam.ts';

/**
 * Closed forms of beam tables: [AISC2017] table 3-23 and [Young2002] table 8.1, from memory; each can be derived by hand.
 * Relative errors [-]. Achieved: below 1e-14 everywhere.
 */
const DIGITS = 11;

/** Uniform load of 3 kN/m downward. */
const W = 3000;
function uniform(from: number, to: number): BeamLoad {
  return { kind: 'line', from, to, atFrom: -W, atTo: -W };
}
function forces(loads: readonly BeamLoad[], supports: readonly number[]): readonly number[] {
  return reactions(loads, supports).map(({ force }) => force);
}

describe('beams against published cases', () => {
  it('[SU1] simple span, uniform load: w l / 2, w l² / 8 in the middle', () => {
    const loads = onSupports([uniform(0, 8)], [0, 8]);
    const { moment, shear } = beamExtremes(loads);
    expect(moment.value / ((W * 64) / 8)).toBeCloseTo(1, DIGITS);
    expect(moment.at).toBeCloseTo(4, DIGITS);
    expect(Math.abs(shear.value) / ((W * 8) / 2)).toBeCloseTo(1, DIGITS);
  });

  it('[SU1] overhangs on both sides, uniform load but for rounding: w l² / 8 - w a² / 2 in the middle', () => {
    for (let i = 1; i <= 50; i++) {
      const [from, to, overhang] = [0.1, 10 + i / 3, 0.5 + i / 97];
      const even = { ...uniform(from, to), atTo: -W * (1 + (i % 3) * Number.EPSILON) } as const;
      const { moment } = beamExtremes(onSupports([even], [from + overhang, to - overhang]));
      const span = to - from - 2 * overhang;
      expect(moment.value / (W * ((span * span) / 8 - (overhang * overhang) / 2))).toBeCloseTo(1, DIGITS);
    }
  });

  it('[SU1] simple span, one force at a: P a b / l under it', () => {
    const loads = onSupports([{ kind: 'point', at: 3, force: -5000 }], [0, 8]);
    const { moment } = beamExtremes(loads);
    expect(moment.value / ((5000 * 3 * 5) / 8)).toBeCloseTo(1, DIGITS);
    expect(moment.at).toBe(3);
  });

  it('[SU1] simple span, load rising to one end: W l 2/(9√3) at l/√3', () => {
    const loads = onSupports([{ kind: 'line', from: 0, to: 6, atFrom: 0, atTo: -W }], [0, 6]);
    const { moment } = beamExtremes(loads);
    const whole = (W * 6) / 2;
    expect(moment.value / ((whole * 6 * 2) / (9 * Math.sqrt(3)))).toBeCloseTo(1, DIGITS);
    expect(moment.at / (6 / Math.sqrt(3))).toBeCloseTo(1, DIGITS);
  });

  it('[SU2] overhang at one end, uniform load: reactions, moment in the span and over the support', () => {
    const [l, a] = [6, 2];
    const held = forces([uniform(0, l + a)], [0, l]);
    expect((held[0] ?? 0) / ((W / (2 * l)) * (l * l - a * a))).toBeCloseTo(1, DIGITS);
    expect((held[1] ?? 0) / ((W / (2 * l)) * (l + a) ** 2)).toBeCloseTo(1, DIGITS);
    const loads = onSupports([uniform(0, l + a)], [0, l]);
    expect(beamExtremes(loads).moment.value / ((W / (8 * l * l)) * (l + a) ** 2 * (l - a) ** 2)).toBeCloseTo(1, DIGITS);
    expect(momentAt(loads, l) / ((-W * a * a) / 2)).toBeCloseTo(1, DIGITS);
  });

  it('[SU2] two equal spans, uniform load: 3/8, 10/8, 3/8 w l; w l² / 8 over the middle, 9/128 w l² in the span', () => {
    const l = 5;
    expect(forces([uniform(0, 2 * l)], [0, l, 2 * l]).map((force) => force / (W * l))).toEqual([
      expect.closeTo(3 / 8, DIGITS),
      expect.closeTo(10 / 8, DIGITS),
      expect.closeTo(3 / 8, DIGITS),
    ]);
    const loads = onSupports([uniform(0, 2 * l)], [0, l, 2 * l]);
    expect(beamExtremes(loads).moment.value / ((-W * l * l) / 8)).toBeCloseTo(1, DIGITS);
    expect(momentAt(loads, (3 / 8) * l) / ((9 / 128) * W * l * l)).toBeCloseTo(1, DIGITS);
  });

  it('[SU2] two equal spans, one loaded: 7/16, 10/16, -1/16 w l; w l² / 16 over the middle, 49/512 w l² in the span', () => {
    const l = 5;
    const held = forces([uniform(0, l)], [0, l, 2 * l]);
    for (const [i, share] of [7 / 16, 10 / 16, -1 / 16].entries())
      expect((held[i] ?? 0) / (W * l)).toBeCloseTo(share, DIGITS);
    const loads = onSupports([uniform(0, l)], [0, l, 2 * l]);
    expect(beamExtremes(loads).moment.value / ((49 / 512) * W * l * l)).toBeCloseTo(1, DIGITS);
    expect(momentAt(loads, l) / ((-W * l * l) / 16)).toBeCloseTo(1, DIGITS);
  });

  it('[SU2] three equal spans, uniform load: 0.4, 1.1, 1.1, 0.4 w l; 0.1 w l² over the inner supports, 0.08 in the end spans', () => {
    const l = 4;
    const held = forces([uniform(0, 3 * l)], [0, l, 2 * l, 3 * l]);
    for (const [i, share] of [0.4, 1.1, 1.1, 0.4].entries())
      expect((held[i] ?? 0) / (W * l)).toBeCloseTo(share, DIGITS);
    const loads = onSupports([uniform(0, 3 * l)], [0, l, 2 * l, 3 * l]);
    expect(beamExtremes(loads).moment.value / (-0.1 * W * l * l)).toBeCloseTo(1, DIGITS);
    expect(momentAt(loads, 0.4 * l) / (0.08 * W * l * l)).toBeCloseTo(1, DIGITS);
  });

  it('[SU3] a free uniform rod pushed at its end is bent most at a third of its length, by 4/27 F l', () => {
    // M(y) = F y (1 − y/l)², from a = F/m and α = 6 F/(m l); the falling chimney of textbooks
    const loads = pushedBeam([{ from: 0, to: 9, mass: 1200 }], [{ at: 0, force: 5000 }]);
    const { moment } = beamExtremes(loads);
    expect(moment.value / ((4 / 27) * 5000 * 9)).toBeCloseTo(1, DIGITS);
    expect(moment.at).toBeCloseTo(3, DIGITS);
  });

  it('[SU3] a free uniform rod pushed in its middle is bent by F l / 8 there', () => {
    const loads = pushedBeam([{ from: -2, to: 6, mass: 700 }], [{ at: 2, force: 5000 }]);
    const { moment, shear } = beamExtremes(loads);
    expect(moment.value / ((-5000 * 8) / 8)).toBeCloseTo(1, DIGITS);
    expect(Math.abs(shear.value) / 2500).toBeCloseTo(1, DIGITS);
  });

  it('[SU1] shear jumps by the force where one stands', () => {
    const loads = onSupports([{ kind: 'point', at: 3, force: -5000 }], [0, 8]);
    expect(shearAt(loads, 3, true) - shearAt(loads, 3, false)).toBeCloseTo(-5000, 8);
  });
});
