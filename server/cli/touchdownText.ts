import { figure } from '../../engine/figures.ts';
import type { Lander } from '../../engine/lander/index.ts';
import type { TouchdownResult } from '../../engine/touchdown/index.ts';
import { namePlace } from './condition.ts';
import type { Landing, LandingOptions } from './landingOptions.ts';
import { describeAttitude, type StateOptions } from './stateOptions.ts';
import { textTable } from './textTable.ts';
import { worldOf } from './worldOptions.ts';

/** One touchdown for people. */
export function touchdownText(
  lander: Lander,
  options: LandingOptions & StateOptions,
  landing: Landing,
  result: TouchdownResult,
): string {
  const { horizontal = 0, descent = 1, unlatched = [] } = options;
  const where = `${lander.name} ${namePlace(worldOf(options))}`;
  return [
    `${where}, ${horizontal} m/s across and ${descent} m/s down: ${outcomeWords(result)}.`,
    `On ${landing.words}${describeAttitude(options)}.`,
    ...courseLines(result),
    '',
    legTable(lander, unlatched, result),
  ].join('\n');
}

/** Such as 'upright (no limit hit)'. */
export function outcomeWords({ outcome, limitsHit }: TouchdownResult): string {
  return `${outcome} (${limitsHit.length === 0 ? 'no limit hit' : `hit: ${limitsHit.join(', ')}`})`;
}

/** What happened from contact to the end, in a few lines. */
export function courseLines(result: TouchdownResult): readonly string[] {
  const { leastMargin, clearance, unsettledReturns: count } = result;
  return [
    `Least margin ${figure(leastMargin.value, 3)} m at ${figure(leastMargin.time, 2)} s; ` +
      `slid ${figure(result.slide, 2)} m; leans ${figure(result.restTiltDeg, 1)} deg at the end, ${figure(result.time, 1)} s.`,
    `Peak acceleration ${figure(result.peakAcceleration, 1)} m/s^2; ${hullWords(clearance)}.`,
    ...(count === 0 ? [] : [accuracyNote(count)]),
  ];
}

function hullWords(clearance: number): string {
  if (!Number.isFinite(clearance)) return 'it has no hull points';
  if (clearance > 0) return `hull no nearer to the ground than ${figure(clearance, 3)} m`;
  return `hull struck the ground and went ${figure(-clearance, 3)} m into it`;
}

function accuracyNote(count: number): string {
  const times = count === 1 ? 'Once' : `${count} times`;
  return `Accuracy: ${times} the force of a leg did not settle within its iterations; do not rely on this result.`;
}

/** Leg by leg; those that fold count from 1. */
export function legTable(
  lander: Lander,
  folding: readonly number[],
  { strokes, strokesUsed, peakLoads, sinkages }: TouchdownResult,
): string {
  return textTable(
    ['leg', 'stroke [m]', 'used [%]', 'peak load [kN]', 'sunk [mm]'].map((heading) => ({ heading, align: 'right' })),
    lander.legs.map((_, index) => [
      String(index + 1),
      figure(strokes[index], 3),
      // a leg that folds is never used up: its stroke is no share of anything
      folding.includes(index + 1) ? 'folds' : figure((strokesUsed[index] ?? 0) * 100, 0),
      figure((peakLoads[index] ?? 0) / 1000, 2),
      figure((sinkages[index] ?? 0) * 1000, 1),
    ]),
  );
}
