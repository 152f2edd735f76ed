import { massLeft } from '../descent/index.ts';
import type { OutsideCheck } from './outsideCheck.ts';
import { EQUALS_PRINTED } from './tolerances.ts';

/** Propellant of a descent. */
export const DESCENT_CHECKS: readonly OutsideCheck[] = [
  rocketEquation(311, '0.519044'),
  rocketEquation(360, '0.567503'),
];

function rocketEquation(specificImpulse: number, expected: string): OutsideCheck {
  return {
    ...EQUALS_PRINTED,
    name: `rocket equation: mass left after 2000 m/s at ${specificImpulse} s`,
    source: 'rocket equation, textbook: e^(-dv / (Isp g0)), g0 9.80665 m/s^2',
    kind: 'derived',
    seen: 'yes',
    expected,
    unit: '-',
    compute: () => massLeft(2000, specificImpulse),
  };
}
