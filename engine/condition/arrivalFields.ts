import { FULL_CIRCLE, type ConditionField } from './conditionField.ts';

const SPEED = { unit: 'm/s', least: -100, most: 100, fallback: 0 } as const;
const LEAN = { unit: 'deg', least: -80, most: 80, fallback: 0 } as const;
const RATE = { unit: 'deg/s', least: -360, most: 360, fallback: 0 } as const;

/** State of the lander at contact. Directions and signs as in touchdown/touchdownCase.ts. */
export const ARRIVAL_FIELDS = {
  horizontalSpeed: { words: 'horizontal speed', meaning: 'horizontal speed', ...SPEED },
  downhillSpeed: { words: 'downhill speed', meaning: 'horizontal speed down the fall line', ...SPEED },
  crossSpeed: { words: 'speed across', meaning: 'horizontal speed across the fall line', ...SPEED },
  travelAzimuthDeg: { words: 'azimuth of travel', meaning: 'azimuth of travel', ...FULL_CIRCLE, fallback: 0 },
  descentRate: { words: 'descent rate', meaning: 'descent rate', unit: 'm/s', least: 0, most: 100 },
  yawDeg: { words: 'yaw', meaning: 'turn of the lander about the vertical', ...FULL_CIRCLE, fallback: 0 },
  leanDeg: { words: 'lean', meaning: 'lean in the plane of travel', ...LEAN },
  pitchDeg: { words: 'pitch', meaning: 'lean toward its own +x', ...LEAN },
  rollDeg: { words: 'roll', meaning: 'lean toward its own -y', ...LEAN },
  rateDegPerSecond: { words: 'body rate', meaning: 'body rate toward the direction of travel', ...RATE },
  pitchRateDegPerSecond: {
    words: 'pitch rate',
    meaning: 'body rate about its own y',
    ...RATE,
    inCampaign: 'pitchRateDegPerS',
  },
  rollRateDegPerSecond: {
    words: 'roll rate',
    meaning: 'body rate about its own x',
    ...RATE,
    inCampaign: 'rollRateDegPerS',
  },
  yawRateDegPerSecond: {
    words: 'yaw rate',
    meaning: 'body rate about its own z',
    ...RATE,
    inCampaign: 'yawRateDegPerS',
  },
  height: {
    words: 'fall',
    meaning: 'free fall before the lowest footpad touches',
    unit: 'm',
    least: 0,
    most: 100,
    fallback: 0,
  },
  mass: { words: 'mass', meaning: 'mass at contact, its tanks drained evenly', unit: 'kg', least: 0.001, most: 1e8 },
} as const satisfies Readonly<Record<string, ConditionField>>;
