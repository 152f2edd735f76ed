/** Public door of the liquid models. */
export { centerShift, liquidShift } from './centerShift.ts';
export { lateralMode } from './lateralMode.ts';
export { lyingShift } from './lyingShift.ts';
export { uprightShift } from './uprightShift.ts';
