import type { ConditionField } from './conditionField.ts';

const TIME = { unit: 's', least: 0, most: 1000 } as const;

/** Legs, engine, thrusters, and what they may bear. Fallbacks are common practice, without a source. */
export const GEAR_FIELDS = {
  crushForceFactor: {
    words: 'crush force factor',
    meaning: 'times every crush force',
    unit: '-',
    least: 0.01,
    most: 10,
    fallback: 1,
  },
  softFactor: {
    words: 'soft factor',
    meaning: 'what is left of their crush forces',
    unit: '-',
    least: 0.01,
    most: 10,
    fallback: 0.5,
  },
  unlatchedFactor: {
    words: 'unlatched factor',
    meaning: 'share of their first crush force at which they fold',
    unit: '-',
    least: 0.001,
    most: 1,
    fallback: 0.05,
  },
  thrust: {
    words: 'thrust',
    meaning: 'thrust still there at contact, along the long axis',
    unit: 'N',
    least: 0,
    most: 1e9,
  },
  cutoffDelay: {
    words: 'cut-off delay',
    meaning: 'from first footpad contact to engine cut-off',
    ...TIME,
    fallback: 0,
  },
  tailOff: { words: 'tail-off', meaning: 'time in which thrust then falls to 1/e; 0 is at once', ...TIME },
  hold: { words: 'hold', meaning: 'attitude thrusters go on holding it upright for so long after contact', ...TIME },
  holdBandwidth: {
    words: 'bandwidth of the hold',
    meaning: 'natural frequency of that hold',
    unit: 'rad/s',
    least: 0.01,
    most: 20,
    fallback: 1,
  },
  maxLegLoad: {
    words: 'most leg load',
    meaning: 'axial load of a leg beyond which it counts as overloaded',
    unit: 'N',
    least: 1,
    most: 1e9,
  },
  maxAcceleration: {
    words: 'most acceleration',
    meaning: 'acceleration of the center of mass, gravity not counted, beyond which it counts as overloaded',
    unit: 'm/s^2',
    least: 0.01,
    most: 1e5,
  },
} as const satisfies Readonly<Record<string, ConditionField>>;
