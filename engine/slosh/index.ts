/** Public door of the liquid models. */
export { centerShift, liquidShift, type CenterShift } from './centerShift.ts';
export { FIRST_LATERAL_ROOT, lateralMode, type LateralMode, type LiquidColumn } from './lateralMode.ts';
export { lyingShift } from './lyingShift.ts';
export { uprightShift, type LiquidShift, type SurfaceContact, type UprightTank } from './uprightShift.ts';
