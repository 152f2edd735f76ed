import type { Lander } from '../lander/lander.ts';
import type { FieldProblem } from '../result.ts';
import { DECIDED_QUESTIONS, type Ground, type TouchdownConditions, type TouchdownOptions } from './touchdownCase.ts';

/** Largest speed taken [m/s] and rate [rad/s]: faster than any landing, slow enough that a step stays small. */
const MAX_SPEED = 100;
const MAX_RATE = 10;
/** Steepest plane [rad]. */
const MAX_SLOPE = Math.PI / 3;
/** Largest budget of steps taken: a minute of computing. */
const MOST_STEPS = 100_000_000;
const MAX_HEIGHTS = 1_000_000;

/** Everything wrong with the conditions of a touchdown of a lander; empty when they can be simulated. */
export function checkTouchdown(
  lander: Lander,
  conditions: TouchdownConditions,
  options: TouchdownOptions = {},
): readonly FieldProblem[] {
  const problems: FieldProblem[] = [];
  const number = (path: string, value: number | undefined, low: number, high: number, unit: string): void => {
    if (value === undefined || (value >= low && value <= high)) return;
    problems.push(wrong(path, `a number from ${low} to ${high} ${unit}`.trim(), `${value}`));
  };
  const leg = (path: string, index: number): void => {
    if (Number.isInteger(index) && index >= 0 && index < lander.legs.length) return;
    problems.push(wrong(path, `the index of a leg, 0 to ${lander.legs.length - 1}`, `${index}`));
  };
  const { state, thrust, hold, loadLimits } = conditions;
  number('gravity', conditions.gravity, 0.001, 1000, 'm/s²');
  number('state.horizontalSpeed', state.horizontalSpeed, -MAX_SPEED, MAX_SPEED, 'm/s');
  number('state.descentRate', state.descentRate, -MAX_SPEED, MAX_SPEED, 'm/s');
  number('state.travelAzimuth', state.travelAzimuth, -100, 100, 'rad');
  number('state.yaw', state.yaw, -100, 100, 'rad');
  number('state.pitch', state.pitch, -Math.PI / 2, Math.PI / 2, 'rad');
  number('state.roll', state.roll, -Math.PI / 2, Math.PI / 2, 'rad');
  number('state.height', state.height, 0, 1000, 'm');
  state.rates?.forEach((rate, i) => number(`state.rates[${i}]`, rate, -MAX_RATE, MAX_RATE, 'rad/s'));
  state.position?.forEach((at, i) => number(`state.position[${i}]`, at, -1e6, 1e6, 'm'));
  checkGround(conditions.ground, problems, number, leg);
  checkLegConditions(lander, conditions, problems, number, leg);
  number('thrust.thrust', thrust?.thrust, 0, 1e9, 'N');
  number('thrust.cutoffDelay', thrust?.cutoffDelay, 0, 1000, 's');
  number('thrust.timeConstant', thrust?.timeConstant, 0, 1000, 's');
  number('hold.duration', hold?.duration, 0, 1000, 's');
  number('hold.bandwidth', hold?.bandwidth, 0.01, 20, 'rad/s');
  number('loadLimits.legLoad', loadLimits?.legLoad, 0, Infinity, 'N');
  number('loadLimits.acceleration', loadLimits?.acceleration, 0, Infinity, 'm/s²');
  number('options.step', options.step, 1e-6, 0.01, 's');
  number('options.timeLimit', options.timeLimit, 0.001, 10_000, 's');
  number('options.damping', options.damping, 0, 2, '');
  const { maxSteps, only } = options;
  if (maxSteps !== undefined && !(Number.isInteger(maxSteps) && maxSteps >= 1 && maxSteps <= MOST_STEPS)) {
    problems.push(wrong('options.maxSteps', `a whole number of steps, 1 to ${MOST_STEPS}`, `${maxSteps}`));
  }
  if (only !== undefined && !DECIDED_QUESTIONS.includes(only)) {
    problems.push(wrong('options.only', `one of ${DECIDED_QUESTIONS.join(', ')}, or not given`, only));
  }
  const every = options.historyEvery;
  if (every !== undefined && !(Number.isInteger(every) && every >= 0)) {
    problems.push(wrong('options.historyEvery', 'a whole number of steps, 0 or more', `${every}`));
  }
  return problems;
}

type NumberCheck = (path: string, value: number | undefined, low: number, high: number, unit: string) => void;
type LegCheck = (path: string, index: number) => void;

function checkGround(ground: Ground, problems: FieldProblem[], number: NumberCheck, leg: LegCheck): void {
  number('ground.friction', ground.friction, 0, 10, '');
  const { shape, soil } = ground;
  if (shape.kind === 'plane') {
    number('ground.shape.slope', shape.slope, 0, MAX_SLOPE, 'rad');
    number('ground.shape.fallAzimuth', shape.fallAzimuth, -100, 100, 'rad');
  } else {
    number('ground.shape.terrain.spacing', shape.terrain.spacing, 0.01, 1e6, 'm');
    number('ground.shape.terrain.firstX', shape.terrain.firstX, -1e7, 1e7, 'm');
    const { heights } = shape.terrain;
    if (heights.length < 2 || heights.length > MAX_HEIGHTS || !heights.every(Number.isFinite)) {
      const expected = `2 to ${MAX_HEIGHTS} finite heights`;
      problems.push(wrong('ground.shape.terrain.heights', expected, `${heights.length} heights`));
    }
  }
  if (soil !== undefined && soil.kind !== 'rigid') {
    number('ground.soil.stiffness', soil.stiffness, 1, 1e12, 'N/m');
    if (soil.kind === 'bearing') {
      number('ground.soil.strength', soil.strength, 1, 1e12, 'Pa');
    } else {
      number('ground.soil.cohesive', soil.cohesive, 0, 1e12, 'N/m^(n+1)');
      number('ground.soil.frictional', soil.frictional, 1, 1e12, 'N/m^(n+2)');
      number('ground.soil.exponent', soil.exponent, 0.2, 3, '');
    }
  }
  ground.underPad?.forEach((spot, i, spots) => {
    leg(`ground.underPad[${i}].leg`, spot.leg);
    if (spots.findIndex((other) => other.leg === spot.leg) < i)
      problems.push(wrong(`ground.underPad[${i}].leg`, 'each leg named once', `${spot.leg} again`));
    number(`ground.underPad[${i}].height`, spot.height, -10, 10, 'm');
  });
}

function checkLegConditions(
  lander: Lander,
  conditions: TouchdownConditions,
  problems: FieldProblem[],
  number: NumberCheck,
  leg: LegCheck,
): void {
  const named = new Set<number>();
  (conditions.legs ?? []).forEach((condition, i) => {
    leg(`legs[${i}].leg`, condition.leg);
    if (named.has(condition.leg))
      problems.push(wrong(`legs[${i}].leg`, 'each leg named once', `${condition.leg} again`));
    named.add(condition.leg);
    if (condition.kind !== 'missing') number(`legs[${i}].factor`, condition.factor, 1e-6, 100, '');
  });
  const missing = (conditions.legs ?? []).filter((condition) => condition.kind === 'missing').length;
  if (missing > 0 && missing >= lander.legs.length)
    problems.push(wrong('legs', 'at least one leg left', 'all missing'));
}

function wrong(path: string, expected: string, came: string): FieldProblem {
  return { code: 'touchdown/out-of-range', path, expected, came };
}
