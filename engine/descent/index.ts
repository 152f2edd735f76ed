/** Public door of what flies a lander down: engine, attitude hold, pilots. */
export { holdTorque, MAX_TURN_RATE } from './attitudeHold.ts';
export { HELD_ACROSS, orderedPilot, steadyOrders, type Orders } from './orderedPilot.ts';
export { HASTY, pilot, STEADY, type PilotAim, type PilotManner } from './steadyPilot.ts';
export { massLeft } from './thrust.ts';
