import { cos, exp, log, nextUniform, type RandomState } from '../../engine/math/index.ts';
import type { Undulation } from '../sites/site.ts';
import type { Profile } from './profile.ts';

const WAVES_PER_OCTAVE = 3;

interface Wave {
  /** [m] */
  readonly amplitude: number;
  /** [rad/m] */
  readonly number: number;
  /** [rad] */
  readonly phase: number;
}

/**
 * Sum of waves with random phases.
 *
 *   z(x) = Σ aᵢ cos(2π x / λᵢ + φᵢ),   aᵢ ∝ λᵢ^H,   Σ aᵢ²/2 = rms²
 *
 * Three wavelengths an octave, from the longest down to the shortest. Self-affine ground in discrete form; common
 * practice.
 */
export function drawUndulation(undulation: Undulation, random: RandomState): Profile {
  const { rmsHeight, shortest, longest, hurst } = undulation;
  if (rmsHeight === 0) return () => 0;
  const octaves = log(longest / shortest) / Math.LN2;
  const count = Math.floor(octaves * WAVES_PER_OCTAVE + 1e-9) + 1;
  const lengths = Array.from({ length: count }, (_, i) => longest * exp((-i / WAVES_PER_OCTAVE) * Math.LN2));
  const weights = lengths.map((length) => exp(hurst * log(length / longest)));
  const power = weights.reduce((sum, weight) => sum + (weight * weight) / 2, 0);
  const scale = rmsHeight / Math.sqrt(power);
  const waves = lengths.map((length, i): Wave => ({
    amplitude: scale * (weights[i] ?? 0),
    number: (2 * Math.PI) / length,
    phase: 2 * Math.PI * nextUniform(random),
  }));
  return (x) => waves.reduce((height, { amplitude, number, phase }) => height + amplitude * cos(number * x + phase), 0);
}
