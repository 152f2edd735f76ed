import { SQUARE, pilot } from '../descent/steadyPilot.ts';
import { createDescent } from '../world/createDescent.ts';
import { markDescent } from '../world/markDescent.ts';
import { readDescent } from '../world/readDescent.ts';
import { setFaults } from '../world/setFaults.ts';
import { stepDescent } from '../world/stepDescent.ts';
import { createMarginGauge, createSideGauge } from './liveMargin.ts';
import { scoreDescent } from './scorecard.ts';
import { aimAt } from './siteNotes.ts';
import type { TableModel } from './tableModel.ts';

/** The played world, its steady pilot as the stand-in at Flying, and the engine's margins: what every real table has. */
export const playedModel: TableModel = {
  createDescent(plan) {
    const descent = createDescent(plan.setup);
    return {
      step: (input, valves, facing) => stepDescent(descent, input, valves, facing),
      setFaults: (faults) => setFaults(descent, faults),
      read: () => readDescent(descent),
      mark: () => markDescent(descent),
    };
  },
  createPilot({ setup: { lander, gravity }, drill }) {
    const craft = { engine: lander.engine, gravity };
    const manner = { ...SQUARE, ...(drill?.profile && { profile: drill.profile }) };
    return (state, spot) => pilot(manner, craft, state, spot && aimAt(spot));
  },
  createMarginGauge,
  createSideGauge,
  scorecard: scoreDescent,
};
