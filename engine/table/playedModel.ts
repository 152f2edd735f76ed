import { STEADY, pilot } from '../descent/steadyPilot.ts';
import { finishRecording, recordInput, recordState, startRecording } from '../replay/recordDescent.ts';
import { createDescent } from '../world/createDescent.ts';
import { readDescent } from '../world/readDescent.ts';
import { stepDescent } from '../world/stepDescent.ts';
import { createMarginGauge } from './liveMargin.ts';
import { scoreDescent } from './scorecard.ts';
import type { TableModel } from './tableModel.ts';

/** The played world, its steady pilot as the stand-in at Flying, and the engine's margins: what every real table has. */
export const playedModel: TableModel = {
  createDescent(plan) {
    const descent = createDescent(plan.setup);
    const recorder = startRecording(plan, descent);
    return {
      step(input) {
        recordInput(recorder, input);
        const events = stepDescent(descent, input);
        recordState(recorder, descent);
        return events;
      },
      read: () => readDescent(descent),
      recording: () => finishRecording(recorder, descent),
    };
  },
  createPilot({ lander, gravity }) {
    const craft = { engine: lander.engine, gravity };
    return (state) => pilot(STEADY, craft, state);
  },
  createMarginGauge,
  scorecard: scoreDescent,
};
