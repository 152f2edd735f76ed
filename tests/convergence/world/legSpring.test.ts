import { describe, expect, it } from 'vitest';
import { advanceOnLegs } from '../../../engine/world/advanceMotion.ts';
import { LEG_DAMPING_RATIO, LEG_DT, PHYSICS_DT } from '../../../engine/world/constants.ts';
import { dropLander, MOON } from '../../support/dropLander.ts';
import { plainLander } from '../../support/plainLander.ts';

const MASS = 2000;

/**
 * A lander that bobs on its elastic legs, never leaving the ground, against the damped oscillator in closed form. The step
 * is fixed, so it is the spring that gets stiffer: what counts is ω h. Largest error over six radians of the swing, as a
 * share of the static sag.
 */
function bobbingError(stiffness: number): { readonly step: number; readonly error: number } {
  const descent = dropLander({ lander: plainLander({ stiffness, force: 1e6 }) });
  const { section, setup, legs, motion, bulk, forces } = descent;
  const omega = Math.sqrt((4 * stiffness) / MASS);
  const sag = (MASS * MOON) / (4 * stiffness);
  const swing = 0.4;
  motion.y = 2 - sag + swing * sag;
  const zeta = LEG_DAMPING_RATIO;
  const damped = omega * Math.sqrt(1 - zeta * zeta);
  let error = 0;
  const steps = Math.max(3, Math.round(6 / omega / PHYSICS_DT));
  for (let i = 1; i <= steps; i++) {
    advanceOnLegs(section, setup.terrain, legs, motion, bulk, forces);
    const t = i * PHYSICS_DT;
    const decay = swing * Math.exp(-zeta * omega * t);
    const exact = decay * (Math.cos(damped * t) + ((zeta * omega) / damped) * Math.sin(damped * t));
    error = Math.max(error, Math.abs((motion.y - (2 - sag)) / sag - exact));
  }
  return { step: omega * LEG_DT, error };
}

describe('the step of the legs', () => {
  it('[PL17] converges with the first order of ω h, which the damper sets', () => {
    const runs = [2.5e5, 1e6, 4e6, 1.6e7].map(bobbingError);
    for (let i = 1; i < runs.length; i++) {
      const [fine, coarse] = [runs[i - 1]!, runs[i]!];
      const order = Math.log2(coarse.error / fine.error) / Math.log2(coarse.step / fine.step);
      expect(Math.abs(order - 1), `order ${order}`).toBeLessThan(0.05);
    }
  });

  it('[PL17] is within 0.2 % of the sag for legs as stiff as Trivet’s', () => {
    // achieved: 0.17 % at 1 MN/m, four legs
    expect(bobbingError(1e6).error).toBeLessThan(0.002);
  });
});
