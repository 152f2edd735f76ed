import type { Lander, TouchdownResult } from '../../engine/index.ts';
import { namePlace } from './condition.ts';
import type { Landing, LandingOptions } from './landingOptions.ts';
import { describeAttitude, type StateOptions } from './stateOptions.ts';
import { figure, textTable } from './textTable.ts';
import { worldOf } from './worldOptions.ts';

/** One touchdown for people. */
export function touchdownText(
  lander: Lander,
  options: LandingOptions & StateOptions,
  landing: Landing,
  result: TouchdownResult,
): string {
  const { horizontal = 0, descent = 1 } = options;
  const where = `${lander.name} ${namePlace(worldOf(options))}`;
  const { outcome, limitsHit, leastMargin, clearance } = result;
  const limits = limitsHit.length === 0 ? 'no limit hit' : `hit: ${limitsHit.join(', ')}`;
  return [
    `${where}, ${horizontal} m/s across and ${descent} m/s down: ${outcome} (${limits}).`,
    `On ${landing.words}${describeAttitude(options)}.`,
    `Least margin ${figure(leastMargin.value, 3)} m at ${figure(leastMargin.time, 2)} s; ` +
      `slid ${figure(result.slide, 2)} m; leans ${figure(result.restTiltDeg, 1)} deg at the end, ${figure(result.time, 1)} s.`,
    `Peak acceleration ${figure(result.peakAcceleration, 1)} m/s^2; hull no nearer to the ground than ` +
      `${Number.isFinite(clearance) ? `${figure(clearance, 3)} m` : '- (no hull points)'}.`,
    ...accuracyNote(result),
    '',
    legTable(lander, options, result),
  ].join('\n');
}

function accuracyNote({ unsettledReturns: count }: TouchdownResult): readonly string[] {
  if (count === 0) return [];
  const times = count === 1 ? 'Once' : `${count} times`;
  return [`Accuracy: ${times} the force of a leg did not settle within its iterations; do not rely on this result.`];
}

function legTable(
  lander: Lander,
  { unlatched = [] }: LandingOptions,
  { strokes, strokesUsed, peakLoads, sinkages }: TouchdownResult,
): string {
  return textTable(
    ['leg', 'stroke [m]', 'used [%]', 'peak load [kN]', 'sunk [mm]'].map((heading) => ({ heading, align: 'right' })),
    lander.legs.map((_, index) => [
      String(index + 1),
      figure(strokes[index], 3),
      // a leg that folds is never used up: its stroke is no share of anything
      unlatched.includes(index + 1) ? 'folds' : figure((strokesUsed[index] ?? 0) * 100, 0),
      figure((peakLoads[index] ?? 0) / 1000, 2),
      figure((sinkages[index] ?? 0) * 1000, 1),
    ]),
  );
}
