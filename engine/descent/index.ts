/** Public door of what flies a lander down: engine, attitude hold, pilots. */
export { holdTorque, MAX_TURN_RATE } from './attitudeHold.ts';
export { HELD_ACROSS, orderedPilot, steadyOrders, type Orders } from './orderedPilot.ts';
export {
  askedRate,
  HASTY,
  pilot,
  STEADY,
  type DescentProfile,
  type PilotAim,
  type PilotManner,
} from './steadyPilot.ts';
export { HIGH_TILT, LOW_TILT, TILT_TAPER } from './steer.ts';
export { massLeft } from './thrust.ts';
