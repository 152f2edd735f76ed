/** Public door of the lander model. */
export { formatLander } from './formatLander.ts';
export { inertiaAbout, inertiaAlong, type InertiaTensor } from './inertiaTensor.ts';
export type { BodyPoint, Lander, Part, PartShape, Tank } from './lander.ts';
export { BOUNDS, COUNTS, LANDER_BUDGET, LANDER_FORMAT, RANGES, TEXTS } from './landerRanges.ts';
export { drainTanks, massRange } from './drainTanks.ts';
export { massProperties, type MassProperties } from './massProperties.ts';
export { parseLander } from './parseLander.ts';
export { parseLanderText } from './parseLanderText.ts';
export { tankLiquid } from './tankLiquid.ts';
