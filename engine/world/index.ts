/** Public door of the played world. */
export { PHYSICS_DT, PHYSICS_REVISION, STEPS_PER_TICK, TICK_DT, TICK_RATE } from './constants.ts';
export { createDescent } from './createDescent.ts';
export { setFaults } from './setFaults.ts';
export type { Descent } from './descentRecord.ts';
export { FACING_RATE, yawAt, type Facings } from './facings.ts';
export { layOutSection } from './layOutSection.ts';
export { hashDescent } from './markDescent.ts';
export { readDescent } from './readDescent.ts';
export { stepDescent } from './stepDescent.ts';
export {
  BETWEEN_CONTACTS,
  OUTCOMES,
  PHASES,
  type Arrival,
  type ControlInput,
  type DescentEvent,
  type DescentSetup,
  type DescentState,
  type LegState,
  type Outcome,
  type Phase,
  type StartState,
  type TouchdownState,
} from './descent.ts';
