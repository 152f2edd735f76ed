/** The study behind DEFAULT_STEP: the same touchdowns at smaller and smaller steps. writeConvergence.ts makes tables and a drawing of it. */
import { nextUniform, seedRandom } from '../../../engine/math/random.ts';
import {
  prepareTouchdown,
  runTouchdown,
  type TouchdownConditions,
  type TouchdownKernel,
  type TouchdownResult,
} from '../../../engine/touchdown/index.ts';
import { ringLander } from '../../support/ringLander.ts';
import { MOON, plane, shippedLander, touchDown } from '../../support/touchDown.ts';

export const STEPS = [1 / 128, 1 / 256, 1 / 512, 1 / 1024, 1 / 2048, 1 / 4096] as const;
export const REFERENCE = 1 / 16_384;

export interface StudyRow {
  readonly step: number;
  readonly values: readonly number[];
}

/** Relative error of the stroke of a plain drop against the energy balance, at two places within a step: undamped, and damped against the finest step. */
export function dropStudy(steps: readonly number[] = STEPS): readonly StudyRow[] {
  const [mass, force, stiffness] = [2000, 20_000, 2e6];
  const lander = ringLander({
    mass,
    inertia: [2000, 2000, 2000],
    centerHeight: 1.5,
    legCount: 4,
    radius: 2,
    crushForce: force,
    stiffness,
    bottomedStiffness: stiffness,
  });
  const stroke = (step: number, height: number, damping: number): number => {
    const state = { horizontalSpeed: 0, descentRate: Math.sqrt(9 - 2 * MOON * height), height };
    return touchDown({ lander, gravity: MOON, ground: plane(0), state }, { step, damping, timeLimit: 0.25 })
      .strokes[0]!;
  };
  const give = force / stiffness;
  const exact = (4.5 * mass + mass * MOON * give - 2 * force * give) / (4 * force - mass * MOON);
  const damped = stroke(REFERENCE, 0, 0.2);
  return steps.map((step) => ({
    step,
    values: [0, 0.0517].flatMap((height) => [
      Math.abs(stroke(step, height, 0) / exact - 1),
      Math.abs(stroke(step, height, 0.2) / damped - 1),
    ]),
  }));
}

/** Touchdowns as a crew may bring them about. */
export function drawArrivals(count: number, seed: number): readonly TouchdownConditions[] {
  const random = seedRandom(seed);
  const between = (low: number, high: number): number => low + (high - low) * nextUniform(random);
  return Array.from({ length: count }, () => ({
    gravity: MOON,
    ground: plane(between(0.5, 1), between(0, 0.2)),
    state: {
      horizontalSpeed: between(0, 3),
      descentRate: between(0.5, 3),
      yaw: between(0, 6),
      pitch: between(-0.08, 0.08),
      roll: between(-0.08, 0.08),
      rates: [between(-0.05, 0.05), between(-0.05, 0.05), between(-0.05, 0.05)],
    },
  }));
}

export interface ArrivalRow {
  /** Asked for, and really used after the bound on stiffness [s]. */
  readonly step: number;
  readonly used: number;
  /** Runs with another outcome than at the reference step. */
  readonly otherOutcome: number;
  /** Mean relative error of the largest stroke, and mean error of the least margin [m], of runs that stay up. */
  readonly strokeError: number;
  readonly marginError: number;
}

/** Random arrivals of a lander at several steps against a reference step. */
export function arrivalStudy(
  id: 'trivet' | 'steeple' | 'bolster',
  count: number,
  steps: readonly number[] = STEPS,
  reference: number = REFERENCE,
): readonly ArrivalRow[] {
  const prepared = prepareTouchdown(shippedLander(id));
  if (!prepared.ok) throw new Error(JSON.stringify(prepared.error));
  const kernel: TouchdownKernel = prepared.value;
  const arrivals = drawArrivals(count, 2);
  const runAll = (step: number): readonly TouchdownResult[] =>
    arrivals.map((arrival) => runTouchdown(kernel, arrival, { step }));
  const fine = runAll(reference);
  return steps.map((step) => {
    let [otherOutcome, strokeError, marginError, up] = [0, 0, 0, 0];
    const coarse = runAll(step);
    coarse.forEach((result, i) => {
      const exact = fine[i]!;
      if (result.outcome !== exact.outcome) otherOutcome++;
      else if (!result.outcome.startsWith('tipped')) {
        const stroke = Math.max(...exact.strokes);
        if (stroke > 0) strokeError += Math.abs(Math.max(...result.strokes) / stroke - 1);
        marginError += Math.abs(result.leastMargin.value - exact.leastMargin.value);
        up++;
      }
    });
    return { step, used: coarse[0]!.step, otherOutcome, strokeError: strokeError / up, marginError: marginError / up };
  });
}
