/** Stress and stability of a thin circular tube: the body of a lander as a beam. */
import { assert } from '../assert.ts';
import { exp } from '../math/exponential.ts';

export interface ThinTube {
  /** Of the middle of the wall [m]. */
  readonly radius: number;
  /** Wall [m], thin: at most a tenth of the radius. */
  readonly wall: number;
  /** Young's modulus [Pa]. */
  readonly modulus: number;
  /** Stress that the material is allowed to carry [Pa]. */
  readonly strength: number;
}

interface TubeLoad {
  /** [N·m], either sign. */
  readonly moment: number;
  /** [N], either sign. */
  readonly shear: number;
  /** Compression along the axis [N]; 0 when there is none. */
  readonly compression: number;
}

export interface TubeUse {
  /** Largest stress along the axis [Pa]. */
  readonly axialStress: number;
  /** Largest shear stress [Pa]. */
  readonly shearStress: number;
  /** Largest equivalent stress over the strength [-]: above 1 it yields. */
  readonly yieldUse: number;
  /** Compression and bending over what the wall buckles at [-]: above 1 it buckles. */
  readonly bucklingUse: number;
}

/** Second moment of area [m⁴].  I = π r³ t                             thin ring, [Young2002] table A.1 */
export function tubeSecondMoment({ radius, wall }: ThinTube): number {
  return Math.PI * radius * radius * radius * wall;
}

/** Section modulus [m³].  W = I / r = π r² t                            thin ring, [Young2002] table A.1 */
export function tubeSectionModulus({ radius, wall }: ThinTube): number {
  return Math.PI * radius * radius * wall;
}

/**
 * Stress and utilization of the most loaded cross-section, moment and shear taken as acting in one section (on the
 * cautious side).
 *
 *   σ = N / (2π r t) + |M| / (π r² t),   τ = |V| / (π r t)               [Young2002] sec. 8.1, 8.10: τ is 2 V / A
 *   equivalent stress: max(σ, √3 τ), σ and τ being greatest a quarter turn apart   von Mises
 */
export function tubeUse(tube: ThinTube, load: TubeLoad): TubeUse {
  checkTube(tube);
  const { radius, wall, strength } = tube;
  const compressive = load.compression / (2 * Math.PI * radius * wall);
  const bending = Math.abs(load.moment) / tubeSectionModulus(tube);
  const shearStress = Math.abs(load.shear) / (Math.PI * radius * wall);
  const axialStress = compressive + bending;
  return {
    axialStress,
    shearStress,
    yieldUse: Math.max(axialStress, Math.sqrt(3) * shearStress) / strength,
    bucklingUse: compressive / bucklingStress(tube, 'compression') + bending / bucklingStress(tube, 'bending'),
  };
}

/**
 * Stress at which the wall of a long thin tube buckles, with the recommended reduction for imperfections [Pa].
 *
 *   σ_cr = γ E t / (r √(3 (1 − ν²))),   ν = 0.3: 0.605 γ E t / r
 *   γ = 1 − 0.901 (1 − e^−φ) in compression, 1 − 0.731 (1 − e^−φ) in bending,   φ = √(r/t) / 16     [SP8007] eq. (5), (11)
 *
 * From memory. Valid for r/t up to 1500, without stiffeners or internal pressure.
 */
export function bucklingStress({ radius, wall, modulus }: ThinTube, load: 'compression' | 'bending'): number {
  const phi = Math.sqrt(radius / wall) / 16;
  const reduction = 1 - (load === 'compression' ? 0.901 : 0.731) * (1 - exp(-phi));
  const poisson = 0.3;
  return (reduction * modulus * wall) / (radius * Math.sqrt(3 * (1 - poisson * poisson)));
}

function checkTube({ radius, wall, modulus, strength }: ThinTube): void {
  assert(radius > 0 && wall > 0 && wall <= radius / 10, `a thin tube has a wall of up to a tenth of its radius`);
  assert(radius / wall <= 1500, 'the buckling rule covers radius / wall up to 1500');
  assert(modulus > 0 && modulus < Infinity && strength > 0 && strength < Infinity, 'modulus and strength are above 0');
}
