/** How tolerances add up against the tip margin: all at their worst together, and as independent deviations. */
import { assert } from '../assert.ts';
import { tripLimit, type ContactCondition, type PivotBody } from '../pivot/index.ts';

/** Quantities that may carry a tolerance, with its unit. */
const STACKED_QUANTITIES = [
  { name: 'horizontalSpeed', unit: 'm/s' },
  { name: 'descentRate', unit: 'm/s' },
  { name: 'rate', unit: 'rad/s' },
  { name: 'slope', unit: 'rad' },
  { name: 'gravity', unit: 'm/s²' },
  { name: 'mass', unit: 'kg' },
  { name: 'halfStance', unit: 'm' },
  { name: 'centerHeight', unit: 'm' },
  { name: 'inertia', unit: 'kg·m²' },
] as const;
type StackedQuantity = (typeof STACKED_QUANTITIES)[number]['name'];

export interface StackUpQuestion {
  readonly body: PivotBody;
  readonly condition: ContactCondition;
  /** Horizontal speed at contact, + in the direction of travel [m/s]. */
  readonly horizontalSpeed: number;
  readonly limit: 'plastic' | 'lossless';
  /** Plus or minus, each above 0, in the unit of the quantity; it must not carry the quantity out of its legal range. */
  readonly tolerances: { readonly [Quantity in StackedQuantity]?: number };
}

export interface StackUp {
  /** Limit less speed at the nominal values [m/s]. */
  readonly nominalMargin: number;
  /** In the order of STACKED_QUANTITIES. */
  readonly contributions: readonly Contribution[];
  /** Margin if every tolerance took its whole linear effect against it [m/s]. */
  readonly worstCase: number;
  /** Margin less the root of the sum of squares: as likely as one tolerance at its end, if they are independent [m/s]. */
  readonly rootSumSquare: number;
  /** Margin computed anew with every quantity at its adverse end; undefined where there is no limit there [m/s]. */
  readonly atWorstCorner: number | undefined;
}

interface Contribution {
  readonly quantity: StackedQuantity;
  readonly tolerance: number;
  /** Change of the margin per unit of the quantity [m/s per unit]. */
  readonly derivative: number;
  /** Loss of margin, derivative times tolerance without its sign [m/s]. */
  readonly effect: number;
}

/** Step of the central difference over the size of the quantity [-]: its error and rounding are both near 1e-10 there. */
const DIFFERENCE_STEP = 1 / 131072;

/**
 * Worst-case and root-sum-square stack-up of the tip margin.
 *
 *   M = v_limit(x) − v,   e_i = |∂M/∂x_i| t_i                 first-order (linear) propagation
 *   worst case  M − Σ e_i          root sum square  M − √(Σ e_i²)                 common practice in tolerancing
 *
 * t  tolerance of x. Undefined where the nominal body has no limit to lose: it cannot stand, or energy alone tips it.
 */
export function stackUp(question: StackUpQuestion): StackUp | undefined {
  const nominalMargin = marginAt(question, {});
  if (nominalMargin === undefined) return undefined;
  const contributions: Contribution[] = [];
  const corner: { [Quantity in StackedQuantity]?: number } = {};
  for (const { name: quantity } of STACKED_QUANTITIES) {
    const tolerance = question.tolerances[quantity];
    if (tolerance === undefined) continue;
    assert(tolerance > 0 && tolerance < Infinity, `the tolerance of ${quantity} is above 0, not ${tolerance}`);
    const derivative = centralDifference(question, quantity);
    if (derivative === undefined) return undefined;
    contributions.push({ quantity, tolerance, derivative, effect: Math.abs(derivative) * tolerance });
    corner[quantity] = nominalValue(question, quantity) - Math.sign(derivative) * tolerance;
  }
  let sum = 0;
  let squares = 0;
  for (const { effect } of contributions) {
    sum += effect;
    squares += effect * effect;
  }
  return {
    nominalMargin,
    contributions,
    worstCase: nominalMargin - sum,
    rootSumSquare: nominalMargin - Math.sqrt(squares),
    atWorstCorner: marginAt(question, corner),
  };
}

/** Near a bound of the quantity (a descent rate of 0) the difference is taken on the legal side alone. */
function centralDifference(question: StackUpQuestion, quantity: StackedQuantity): number | undefined {
  const value = nominalValue(question, quantity);
  const step = DIFFERENCE_STEP * Math.max(Math.abs(value), question.tolerances[quantity] ?? 0);
  const high = value + step;
  const low = isSigned(quantity) ? value - step : Math.max(0, value - step);
  const above = marginAt(question, { [quantity]: high });
  const below = marginAt(question, { [quantity]: low });
  return above === undefined || below === undefined ? undefined : (above - below) / (high - low);
}

function marginAt(
  question: StackUpQuestion,
  changed: { readonly [Quantity in StackedQuantity]?: number },
): number | undefined {
  const value = (quantity: StackedQuantity): number => changed[quantity] ?? nominalValue(question, quantity);
  const { body, condition } = question;
  const { halfStance, oppositeHalfStance } = body;
  const hasDescent = condition.descentRate !== undefined || changed.descentRate !== undefined;
  const limit = tripLimit(
    {
      mass: value('mass'),
      halfStance: value('halfStance'),
      centerHeight: value('centerHeight'),
      inertia: value('inertia'),
      // a center of mass off by so much nears one edge as it leaves the other
      ...(oppositeHalfStance !== undefined && {
        oppositeHalfStance: oppositeHalfStance + halfStance - value('halfStance'),
      }),
    },
    {
      ...condition,
      gravity: value('gravity'),
      slope: value('slope'),
      rate: value('rate'),
      ...(hasDescent && { descentRate: value('descentRate') }),
    },
  );
  if (limit.kind === 'cannotStand') return undefined;
  const speed = limit[question.limit]?.horizontal;
  return speed === undefined ? undefined : speed - value('horizontalSpeed');
}

function nominalValue({ body, condition, horizontalSpeed }: StackUpQuestion, quantity: StackedQuantity): number {
  switch (quantity) {
    case 'horizontalSpeed':
      return horizontalSpeed;
    case 'descentRate':
      return condition.descentRate ?? 0;
    case 'rate':
      return condition.rate ?? 0;
    case 'slope':
    case 'gravity':
      return condition[quantity];
    case 'mass':
    case 'halfStance':
    case 'centerHeight':
    case 'inertia':
      return body[quantity];
  }
  return quantity satisfies never;
}

function isSigned(quantity: StackedQuantity): boolean {
  return quantity === 'horizontalSpeed' || quantity === 'rate' || quantity === 'slope';
}
