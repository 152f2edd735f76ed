/** Public door of the faults. */
export { isCutOffDead } from './cutOffFails.ts';
export {
  isSensorFault,
  SENSOR_FAULT_KINDS,
  VEHICLE_FAULT_KINDS,
  VEHICLE_FAULT_SOURCES,
  VEHICLE_PARTS,
  type Fault,
  type SensorFault,
  type VehicleFaultKind,
  type VehiclePart,
} from './fault.ts';
export { leakAt } from './leak.ts';
export { legConditionsAt } from './legConditions.ts';
export { parseFault, readUndatedFault } from './parseFault.ts';
export { thrustFactorAt } from './thrustLoss.ts';
export { thrustOffsetAt } from './thrustOffset.ts';
