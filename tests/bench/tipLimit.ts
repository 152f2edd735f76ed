import {
  prepareTouchdown,
  runTouchdown,
  tipLimit,
  type TouchdownConditions,
  type TouchdownKernel,
} from '../../engine/touchdown/index.ts';
import { MOON, plane, shippedLander } from '../support/touchDown.ts';
import { nanosecondsPerCall, type BenchRow } from './row.ts';

const LANDERS = ['trivet', 'bolster', 'steeple'] as const;
const SLOPES_DEG = [0, 3, 5, 8];
const DESCENT_RATES = [1, 1.5, 2.5];
const BATCHES = 3;

/** What the tip limit of one arrival costs, mean over slopes and descent rates, against a single touchdown of the same arrivals at half a meter a second. */
export function benchTipLimit(): readonly BenchRow[] {
  return LANDERS.map((id) => {
    const prepared = prepareTouchdown(shippedLander(id));
    if (!prepared.ok) throw new Error(`${id} cannot be simulated`);
    const limitNs = meanOverArrivals(prepared.value, (kernel, arrival) => void tipLimit(kernel, arrival));
    const runNs = meanOverArrivals(prepared.value, (kernel, arrival) => void runTouchdown(kernel, arrival));
    return {
      measure: `tip limit of one arrival, ${id}`,
      value: limitNs / 1e6,
      unit: 'ms',
      reference: 'one touchdown',
      referenceValue: runNs / 1e6,
    };
  });
}

function meanOverArrivals(
  kernel: TouchdownKernel,
  work: (kernel: TouchdownKernel, arrival: TouchdownConditions) => void,
): number {
  const arrivals = SLOPES_DEG.flatMap((slopeDeg) =>
    DESCENT_RATES.map((descentRate, i): TouchdownConditions => ({
      gravity: MOON,
      ground: plane(0.8, (slopeDeg * Math.PI) / 180),
      state: { horizontalSpeed: 0.5, descentRate, yaw: (i * Math.PI) / 12 },
    })),
  );
  const all = nanosecondsPerCall(() => arrivals.forEach((arrival) => work(kernel, arrival)), {
    calls: 1,
    batches: BATCHES,
  });
  return all / arrivals.length;
}
