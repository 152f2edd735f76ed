import { pilot, STEADY } from '../../../engine/descent/index.ts';
import type { TablePlan } from '../../../engine/table/index.ts';
import {
  createDescent,
  readDescent,
  stepDescent,
  type ControlInput,
  type DescentState,
} from '../../../engine/world/index.ts';

/** Flies a plan to its outcome with what a pilot commands. */
export function flyPlan({ setup }: TablePlan, command: (state: DescentState) => ControlInput): DescentState {
  const descent = createDescent(setup);
  let state = readDescent(descent);
  while (state.outcome === undefined) {
    stepDescent(descent, command(state));
    state = readDescent(descent);
  }
  return state;
}

/** As the stand-in at Flying commands. */
export function steadily({ setup }: TablePlan): (state: DescentState) => ControlInput {
  const craft = { engine: setup.lander.engine, gravity: setup.gravity };
  return (state) => pilot(STEADY, craft, state);
}
