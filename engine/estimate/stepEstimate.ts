import type { Readings } from '../sensors/reading.ts';
import { REMEMBERED, type Estimate } from './estimate.ts';
import { predictBlind, predictByUnit } from './predict.ts';
import type { Judgments } from './sourceTrack.ts';
import { STATES } from './state.ts';
import { WEIGHED, weighReport } from './weighReport.ts';

/**
 * One tick of belief: dead reckoning, then every report that has come in this tick, in the order of WEIGHED. Only sources that the crew accepts, that
 * call themselves valid, and that are inside the gate are taken in; all are checked, whatever the crew says of them.
 */
export function stepEstimate(estimate: Estimate, readings: Readings, judgments: Judgments): void {
  estimate.tick += 1;
  const { tick, tracks } = estimate;
  const { inertialUnit } = readings;
  const followsUnit = inertialUnit.arrivedTick === tick && inertialUnit.isValid && isAccepted(judgments.inertialUnit);
  if (followsUnit) predictByUnit(estimate, inertialUnit.values);
  else predictBlind(estimate);
  tracks.inertialUnit.isUsed = followsUnit;
  if (followsUnit) tracks.inertialUnit.usedTick = tick;
  remember(estimate);
  for (let index = 0; index < WEIGHED.length; index++) {
    const source = WEIGHED[index]!;
    if (readings[source].arrivedTick === tick)
      weighReport(estimate, source, readings[source], isAccepted(judgments[source]));
  }
}

function isAccepted(judgment: string | undefined): boolean {
  return judgment === undefined || judgment === 'accepted';
}

function remember({ tick, mean, past }: Estimate): void {
  const at = (tick % REMEMBERED) * STATES;
  for (let state = 0; state < STATES; state++) past[at + state] = mean[state]!;
}
