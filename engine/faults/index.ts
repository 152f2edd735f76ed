/** Public door of the faults. */
export { isCutOffDead } from './cutOffFails.ts';
export {
  SENSOR_FAULT_KINDS,
  VEHICLE_FAULT_SOURCES,
  type Fault,
  type FaultSpan,
  type SensorFault,
  type VehicleFault,
} from './fault.ts';
export { isActive } from './isActive.ts';
export { leakAt } from './leak.ts';
export { legConditionsAt } from './legConditions.ts';
export { parseFault } from './parseFault.ts';
export { thrustFactorAt } from './thrustLoss.ts';
export { thrustOffsetAt } from './thrustOffset.ts';
