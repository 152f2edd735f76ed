import { ALTIMETER } from './altimeter.ts';
import { ATTITUDE_REFERENCE } from './attitudeReference.ts';
import { CONTACT_PROBES } from './contactProbes.ts';
import { INERTIAL_UNIT } from './inertialUnit.ts';
import { LEG_INDICATIONS } from './legIndications.ts';
import { PROPELLANT_GAUGE } from './propellantGauge.ts';
import type { SensorTiming } from './sensorSpec.ts';
import type { Source } from './sources.ts';
import { SURFACE_CAMERA } from './surfaceCamera.ts';
import { VELOCITY_RADAR } from './velocityRadar.ts';

/** When each source samples and reports. */
export const TIMINGS: Readonly<Record<Source, SensorTiming>> = {
  inertialUnit: INERTIAL_UNIT,
  altimeter: ALTIMETER,
  velocityRadar: VELOCITY_RADAR,
  attitudeReference: ATTITUDE_REFERENCE,
  surfaceCamera: SURFACE_CAMERA,
  propellantGauge: PROPELLANT_GAUGE,
  contactProbes: CONTACT_PROBES,
  legIndications: LEG_INDICATIONS,
};
