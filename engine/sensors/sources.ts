import { COUNTS } from '../lander/landerRanges.ts';

/** What there is to read, in the order in which noise is keyed: new ones go to the end. */
export const SOURCES = [
  'inertialUnit',
  'altimeter',
  'velocityRadar',
  'attitudeReference',
  'surfaceCamera',
  'propellantGauge',
  'contactProbes',
  'legIndications',
] as const;
export type Source = (typeof SOURCES)[number];

/** One channel a leg: leg0, leg1, ... in the order of the lander, for as many legs as any lander has. */
const LEG_CHANNELS: readonly string[] = Array.from({ length: COUNTS.legs.most }, (_, leg) => `leg${leg}`);

/**
 * The values of a reading, by name and in order.
 *
 * | source            | channels                                                                                                      |
 * | ----------------- | ------------------------------------------------------------------------------------------------------------- |
 * | inertialUnit      | specific force across (+ to the lander's right) and along (+ to the nose) [m/s²], rate counter-clockwise [rad/s] |
 * | altimeter         | range from the center of mass along the body axis down to the ground [m]                                        |
 * | velocityRadar     | velocity over the ground, across and along, signs as above [m/s]                                                |
 * | attitudeReference | angle from upright, counter-clockwise [rad]                                                                     |
 * | surfaceCamera     | drift over the ground, + to the right of the section [m/s]                                                      |
 * | propellantGauge   | usable propellant [kg]                                                                                          |
 * | contactProbes     | 1 where the probe below the leg touches, else 0 [-]                                                             |
 * | legIndications    | 1 where the leg is shown locked, else 0 [-]                                                                     |
 */
export const CHANNELS: Readonly<Record<Source, readonly string[]>> = {
  inertialUnit: ['across', 'along', 'rate'],
  altimeter: ['range'],
  velocityRadar: ['across', 'along'],
  attitudeReference: ['angle'],
  surfaceCamera: ['drift'],
  propellantGauge: ['mass'],
  contactProbes: LEG_CHANNELS,
  legIndications: LEG_CHANNELS,
};

/** How many values a reading of the source has on a lander of so many legs. */
export function channelCount(source: Source, legs: number): number {
  return CHANNELS[source] === LEG_CHANNELS ? legs : CHANNELS[source].length;
}
