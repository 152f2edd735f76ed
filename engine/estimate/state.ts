/**
 * What is estimated, by place in the mean and in the covariance.
 *
 * | place       | meaning                                                                                                                   |
 * | ----------- | ------------------------------------------------------------------------------------------------------------------------- |
 * | X           | of the center of mass in the section, right [m]                                                                             |
 * | HEIGHT      | of the center of mass above the ground straight below [m] |
 * | VX, VY      | velocity, right and up [m/s]                                                                                                |
 * | ANGLE       | from upright, counter-clockwise [rad]                                                                                       |
 * | BIAS_ACROSS | of the inertial unit's accelerometers, across and along the body [m/s²]                                                     |
 * | BIAS_ALONG  |                                                                                                                             |
 * | BIAS_RATE   | of its gyroscope [rad/s]                                                                                                    |
 * | BEAM | what the map is off by between straight below and where the altimeter's beam meets the ground, over its standard deviation [-] |
 */
export const X = 0;
export const HEIGHT = 1;
export const VX = 2;
export const VY = 3;
export const ANGLE = 4;
export const BIAS_ACROSS = 5;
export const BIAS_ALONG = 6;
export const BIAS_RATE = 7;
export const BEAM = 8;
export const STATES = 9;
