// first, on purpose: see there
import { platformAtan, platformSin } from './platformMath.ts';
import { tripLimit, type ContactCondition, type PivotBody } from '../../engine/pivot/index.ts';
import { nanosecondsPerCall, type BenchRow } from './row.ts';

const BODY: PivotBody = { mass: 1000, halfStance: 1.5, centerHeight: 2, inertia: 1500 };
const CALLS = 200_000;
const BATCHES = 7;

/** How many trip limits the engine works out in a second, against the bare arithmetic of the closed form. */
export function benchTripLimitRate(): readonly BenchRow[] {
  // the slope moves from call to call and the results are summed, so that nothing can be hoisted out of the loop
  let slope = 0;
  let sum = 0;
  const nextSlope = (): number => {
    slope = slope > 0.3 ? 0 : slope + 1e-6;
    return slope;
  };
  const engineNs = nanosecondsPerCall(
    () => {
      const limit = tripLimit(BODY, condition(nextSlope()));
      if (limit.kind === 'limit') sum += limit.plastic.alongGround + (limit.lossless?.alongGround ?? 0);
    },
    { calls: CALLS, batches: BATCHES },
  );
  const bareNs = nanosecondsPerCall(
    () => {
      sum += bareClosedForm(BODY, condition(nextSlope()));
    },
    { calls: CALLS, batches: BATCHES },
  );
  if (!Number.isFinite(sum) || sum === 0) throw new Error('The bench of the trip limit computed nothing.');
  return [
    {
      measure: 'trip limits, plastic and lossless',
      value: 1e9 / engineNs / 1e6,
      unit: 'million/s',
      reference: 'bare closed forms, platform sin and atan',
      referenceValue: 1e9 / bareNs / 1e6,
    },
  ];
}

function condition(slope: number): ContactCondition {
  return { gravity: 1.62422, slope };
}

/** v = √(2 g I_P L (1 − cos(α − φ)) / (m h²)) and √(2 g L (1 − cos(α − φ))), with no checks and no descent. */
function bareClosedForm(body: PivotBody, { gravity, slope }: ContactCondition): number {
  const { mass, halfStance, centerHeight, inertia } = body;
  const arm = Math.sqrt(halfStance * halfStance + centerHeight * centerHeight);
  const sine = platformSin((platformAtan(halfStance / centerHeight) - slope) / 2);
  const climb = 2 * arm * sine * sine;
  const plastic = Math.sqrt((2 * gravity * climb * (inertia + mass * arm * arm)) / mass) / centerHeight;
  return plastic + Math.sqrt(2 * gravity * climb);
}
