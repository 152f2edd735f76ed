/**
 * A uniform beam on two or more rigid supports, with or without overhangs.
 *
 *   EI v'''' = q(y)                                     Euler-Bernoulli, [Hibbeler2018] ch. 12
 *   EI v(y) = Σ F ⟨y − a⟩³/6 + Σ R_i ⟨y − y_i⟩³/6 + (line loads, integrated likewise) + C_1 y + C_2
 *   v(y_i) = 0 at each support,   Σ F + Σ R = 0,   Σ F a + Σ R_i y_i = 0
 *
 * ⟨ ⟩ is the argument where positive, else 0 (Macaulay). The system is linear in the reactions and the two constants; the
 * bending stiffness EI cancels, because the supports do not give.
 */
import { assert } from '../assert.ts';
import { solveLinear } from '../math/linearSystem.ts';
import { breakpoints, type BeamLoad } from './beam.ts';

interface Reaction {
  /** [m] */
  readonly at: number;
  /** Upward [N]; negative where the beam would lift off and is held down. */
  readonly force: number;
}

/** Reactions of the supports, in the order given. Supports: at least two different places [m]. */
export function reactions(loads: readonly BeamLoad[], supports: readonly number[]): readonly Reaction[] {
  assert(new Set(supports).size === supports.length && supports.length >= 2, 'a beam rests on at least two places');
  // lengths from the first point and in units of the beam, so that the system is well scaled
  const places = [...breakpoints(loads), ...supports];
  const start = Math.min(...places);
  const length = Math.max(...places) - start;
  const scaled = loads.map((load) => scaleLoad(load, start, length));
  const at = supports.map((place) => (place - start) / length);
  const rows = at.map((y) => [...at.map((support) => cubed(y - support) / 6), y, 1]);
  const right = at.map((y) => -deflectionOf(scaled, y));
  rows.push([...at.map(() => 1), 0, 0], [...at, 0, 0]);
  right.push(-total(scaled, false), -total(scaled, true));
  const solution = solveLinear(rows, right);
  assert(solution !== undefined, 'the supports of a beam lie too near to each other');
  return supports.map((place, i) => ({ at: place, force: solution[i] ?? NaN }));
}

/** The loads and the reactions together: a set in equilibrium. */
export function onSupports(loads: readonly BeamLoad[], supports: readonly number[]): readonly BeamLoad[] {
  const held = reactions(loads, supports).map(({ at, force }): BeamLoad => ({ kind: 'point', at, force }));
  return [...loads, ...held];
}

/** Places as shares of the length; a load per length becomes a force per length of the unit beam. */
function scaleLoad(load: BeamLoad, start: number, length: number): BeamLoad {
  if (load.kind === 'point') return { ...load, at: (load.at - start) / length };
  return {
    kind: 'line',
    from: (load.from - start) / length,
    to: (load.to - start) / length,
    atFrom: load.atFrom * length,
    atTo: load.atTo * length,
  };
}

/** EI times the deflection by the loads alone, without the constants. */
function deflectionOf(loads: readonly BeamLoad[], y: number): number {
  let sum = 0;
  for (const load of loads) {
    if (load.kind === 'point') sum += (load.force * cubed(y - load.at)) / 6;
    else {
      const slope = (load.atTo - load.atFrom) / (load.to - load.from);
      sum += rampDeflection(load.atFrom, slope, y - load.from) - rampDeflection(load.atTo, slope, y - load.to);
    }
  }
  return sum;
}

/** Of a load per length that starts with a value and grows with a slope for ever. */
function rampDeflection(value: number, slope: number, s: number): number {
  if (s <= 0) return 0;
  const fourth = s * s * s * s;
  return (value * fourth) / 24 + (slope * fourth * s) / 120;
}

/** Sum of the loads, or of their moments about 0. */
function total(loads: readonly BeamLoad[], moment: boolean): number {
  let sum = 0;
  for (const load of loads) {
    if (load.kind === 'point') sum += load.force * (moment ? load.at : 1);
    else {
      const length = load.to - load.from;
      const force = ((load.atFrom + load.atTo) / 2) * length;
      // ∫ (a + k s)(from + s) ds
      const about = load.from * force + (length * length * (load.atFrom + 2 * load.atTo)) / 6;
      sum += moment ? about : force;
    }
  }
  return sum;
}

function cubed(x: number): number {
  return x > 0 ? x * x * x : 0;
}
