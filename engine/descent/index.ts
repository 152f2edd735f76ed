/** Public door of what flies a lander down: engine, attitude hold, pilots. */
export { holdTorque, MAX_TURN_RATE, type TurningBody } from './attitudeHold.ts';
export { HASTY, pilot, STEADY, type PilotedCraft, type PilotManner } from './steadyPilot.ts';
export {
  burnPercent,
  commandedThrust,
  lagStep,
  leastBurnPercent,
  massLeft,
  propellantPerImpulse,
  type LagStep,
} from './thrust.ts';
