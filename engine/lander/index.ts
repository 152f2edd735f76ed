/** Public door of the lander model. */
export { applyInertia, inertiaAbout, inertiaAlong, type InertiaTensor } from './inertiaTensor.ts';
export type { BodyPoint, CrushStage, Engine, Lander, Leg, Part, PartShape, Tank } from './lander.ts';
export { massProperties, type MassProperties } from './massProperties.ts';
export { tankLiquid, type TankLiquid } from './tankLiquid.ts';
