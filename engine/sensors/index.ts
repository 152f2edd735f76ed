/** Public door of the sensors. */
export { ALTIMETER } from './altimeter.ts';
export { ATTITUDE_REFERENCE } from './attitudeReference.ts';
export { CONTACT_PROBES } from './contactProbes.ts';
export { INERTIAL_UNIT } from './inertialUnit.ts';
export { LEG_INDICATIONS } from './legIndications.ts';
export { PROPELLANT_GAUGE } from './propellantGauge.ts';
export { createReadings, type Reading, type Readings } from './reading.ts';
export { readSensors } from './readSensors.ts';
export { sampleRate, type SensorError, type SensorTiming } from './sensorSpec.ts';
export { CHANNELS, channelCount, SOURCES, type Source } from './sources.ts';
export { createSuite, type SensorSuite, type SuiteSetup } from './suite.ts';
export { SURFACE_CAMERA } from './surfaceCamera.ts';
export { TIMINGS } from './timings.ts';
export { VELOCITY_RADAR } from './velocityRadar.ts';
