/** Public door of the liquid models. */
export { centerShift, liquidShift } from './centerShift.ts';
export { lateralMode } from './lateralMode.ts';
export { lyingShift } from './lyingShift.ts';
export { AT_REST, BAFFLED_DAMPING, riseAtWall, stepSwing, swingSize, type FeltMotion, type Swing } from './swing.ts';
export { uprightShift } from './uprightShift.ts';
