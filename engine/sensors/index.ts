/** Public door of the sensors. */
export { groundRange } from './groundRange.ts';
export { INERTIAL_UNIT } from './inertialUnit.ts';
export { createReadings, type Readings } from './reading.ts';
export { readSensors } from './readSensors.ts';
export { CHANNELS, SOURCES, type Source } from './sources.ts';
export { createSuite, type SensorSuite } from './suite.ts';
export { TIMINGS } from './timings.ts';
