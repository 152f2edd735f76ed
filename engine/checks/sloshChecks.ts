import { lateralMode } from '../slosh/index.ts';
import type { OutsideCheck } from './outsideCheck.ts';
import { EQUALS_PRINTED } from './tolerances.ts';

/** Gravity of the example [m/s²]. */
const EXAMPLE_GRAVITY = 9.81;

const FORM = {
  source: 'NASA SP-106, Abramson 1966 [Abramson1966]',
  kind: 'form',
  seen: 'no',
  ...EQUALS_PRINTED,
} as const;

/** First lateral mode of an upright cylinder. */
export const SLOSH_CHECKS: readonly OutsideCheck[] = [
  frequencySquare(0.5, '1.337026'),
  frequencySquare(1, '1.750798'),
  frequencySquare(2, '1.838854'),
  swingingShare(0.5, '0.660108'),
  swingingShare(1, '0.432197'),
  swingingShare(2, '0.226967'),
  {
    ...FORM,
    name: 'slosh frequency, radius and depth 1 m',
    expected: '0.65959',
    unit: 'Hz',
    note: 'g 9.81 m/s^2',
    compute: () => lateralMode({ radius: 1, depth: 1 }, EXAMPLE_GRAVITY).frequency / (2 * Math.PI),
  },
];

function frequencySquare(depth: number, expected: string): OutsideCheck {
  return {
    ...FORM,
    name: `slosh frequency squared times R/g, depth ${depth} R`,
    expected,
    unit: '-',
    compute: () => {
      const { frequency } = lateralMode({ radius: 1, depth }, EXAMPLE_GRAVITY);
      return (frequency * frequency) / EXAMPLE_GRAVITY;
    },
  };
}

function swingingShare(depth: number, expected: string): OutsideCheck {
  return {
    ...FORM,
    name: `slosh share of the liquid that swings, depth ${depth} R`,
    expected,
    unit: '-',
    compute: () => lateralMode({ radius: 1, depth }, EXAMPLE_GRAVITY).massRatio,
  };
}
