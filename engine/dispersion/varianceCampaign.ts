/** Which factor of a campaign moves an answer, by its share of the variance: a designed set of runs of its own. */
import { assert } from '../assert.ts';
import { SOBOL_DIMENSIONS } from '../math/sobol.ts';
import { campaignAxes, campaignFactors, drawAt, touchdownOf, type Campaign, type DrawnInputs } from './campaign.ts';
import { createPointSet } from './pointSet.ts';
import { designPoint, designRuns, varianceShares, type VarianceDesign, type VarianceShares } from './sensitivity.ts';
import type { SimulateTouchdown } from './tally.ts';

export interface VariancePlan {
  readonly campaign: Campaign;
  readonly design: VarianceDesign;
  /** Names of the factors: an input, 'gear', or two inputs that are drawn together. */
  readonly names: readonly string[];
  readonly runs: number;
}

/** Sensitivities of the least margin and of staying upright (1) or not (0). */
export interface FactorShares {
  readonly name: string;
  readonly leastMargin: VarianceShares | undefined;
  readonly upright: VarianceShares | undefined;
}

/** Base points are a power of two: the design is even only then. */
export function planVariance(campaign: Campaign, basePoints: number): VariancePlan {
  assert(isPowerOfTwo(basePoints), `base points are a power of 2, not ${basePoints}`);
  const { names, factorOf } = campaignFactors(campaign);
  assert(names.length >= 1, 'nothing is dispersed in this campaign');
  assert(2 * factorOf.length <= SOBOL_DIMENSIONS, `at most ${SOBOL_DIMENSIONS / 2} coordinates can be told apart`);
  const design = { basePoints, factors: names.length, factorOf };
  return { campaign, design, names, runs: designRuns(design) };
}

/** Draws a run of the design. Always on Sobol' points, whatever the campaign's own method. */
export function createVarianceDrawer(plan: VariancePlan): (run: number) => DrawnInputs {
  const { campaign, design } = plan;
  const dimensions = 2 * design.factorOf.length;
  const points = createPointSet({ method: 'sobol', dimensions, size: design.basePoints, seed: campaign.seed });
  const axes = campaignAxes(campaign);
  return (run) => drawAt(campaign, axes, designPoint(points, design, run));
}

/** Answers of runs first … first + count − 1 of the design: least margin and upright, a row a run. */
export function runVarianceBatch(
  plan: VariancePlan,
  range: { readonly first: number; readonly count: number },
  simulate: SimulateTouchdown,
): Float64Array {
  const draw = createVarianceDrawer(plan);
  const rows = new Float64Array(2 * range.count);
  for (let i = 0; i < range.count; i++) {
    const answer = simulate(touchdownOf(plan.campaign, draw(range.first + i)));
    rows[2 * i] = answer.leastMargin.value;
    rows[2 * i + 1] = answer.outcome === 'upright' ? 1 : 0;
  }
  return rows;
}

/** Shares from the rows of all runs, in order. Largest total share of the margin first. */
export function factorShares(plan: VariancePlan, rows: Float64Array): readonly FactorShares[] {
  assert(
    rows.length === 2 * plan.runs,
    `a design of ${plan.runs} runs has ${2 * plan.runs} answers, not ${rows.length}`,
  );
  const column = (place: 0 | 1): Float64Array => rows.filter((_, i) => i % 2 === place);
  const margin = varianceShares(column(0), plan.names.length);
  const upright = varianceShares(column(1), plan.names.length);
  return plan.names
    .map((name, j) => ({ name, leastMargin: margin?.[j], upright: upright?.[j] }))
    .toSorted((a, b) => (b.leastMargin?.total ?? 0) - (a.leastMargin?.total ?? 0));
}

function isPowerOfTwo(n: number): boolean {
  return Number.isInteger(n) && n >= 2 && n <= 1073741824 && (n & (n - 1)) === 0;
}
