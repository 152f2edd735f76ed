import { figure, shortAngle } from '../../engine/figures.ts';
import type { Lander } from '../../engine/lander/index.ts';
import type { TouchdownOutcome, TouchdownResult } from '../../engine/touchdown/index.ts';
import { namePlace } from './condition.ts';
import type { Landing, LandingOptions } from './landingOptions.ts';
import { describeAttitude, type StateOptions } from './stateOptions.ts';
import { textTable, type Column } from './textTable.ts';
import { worldOf } from './worldOptions.ts';

/** One touchdown in one row: the same columns for one yaw and for many. */
interface TouchdownRow {
  readonly yawDeg: number;
  readonly outcome: TouchdownOutcome;
  readonly limitsHit: readonly string[];
  readonly leastMargin: number;
  /** Of the leg that is used up most [-]. */
  readonly strokeUsed: number;
  /** Of the leg that is loaded most [N]. */
  readonly peakLoad: number;
  readonly peakAcceleration: number;
  readonly clearance: number | null;
  readonly slide: number;
  readonly restTiltDeg: number;
  readonly time: number;
  readonly unsettledReturns: number;
}

export function touchdownRow(yawDeg: number, result: TouchdownResult): TouchdownRow {
  const { outcome, limitsHit, leastMargin, strokesUsed, peakLoads, peakAcceleration } = result;
  const { clearance, slide, restTiltDeg, time, unsettledReturns } = result;
  return {
    yawDeg,
    outcome,
    limitsHit,
    leastMargin: leastMargin.value,
    strokeUsed: Math.max(...strokesUsed),
    peakLoad: Math.max(...peakLoads),
    peakAcceleration,
    clearance: Number.isFinite(clearance) ? clearance : null,
    slide,
    restTiltDeg,
    time,
    unsettledReturns,
  };
}

/** Yaws at equal steps all round, from 0 on [deg]. */
export function yawsAllRound(count: number): readonly number[] {
  return Array.from({ length: count }, (_, index) => (360 * index) / count);
}

/** From the mildest. */
const SEVERITY: { readonly [Outcome in TouchdownOutcome]: number } = {
  upright: 0,
  overloaded: 1,
  'timed out': 2,
  'tipped uphill': 3,
  'tipped downhill': 3,
};

/** Of two alike the one with less margin is worse; of two that tip neither is, since a run ends when that is certain. */
export function worstRow(rows: readonly TouchdownRow[]): TouchdownRow | undefined {
  const isWorse = (a: TouchdownRow, b: TouchdownRow): boolean => {
    const more = SEVERITY[a.outcome] - SEVERITY[b.outcome];
    return more === 0 && !isTipped(a) ? a.leastMargin < b.leastMargin : more > 0;
  };
  return rows.reduce<TouchdownRow | undefined>(
    (worst, row) => (!worst || isWorse(row, worst) ? row : worst),
    undefined,
  );
}

function isTipped({ outcome }: TouchdownRow): boolean {
  return outcome === 'tipped downhill' || outcome === 'tipped uphill';
}

/** Which yaw is worst, or at which it tips. */
function worstWords(rows: readonly TouchdownRow[]): string {
  const tipped = rows.filter(isTipped);
  const worst = worstRow(rows);
  if (worst === undefined || tipped.length === rows.length) return 'Tips at every yaw.';
  if (tipped.length > 0) return `Tips at yaw ${tipped.map(({ yawDeg }) => shortAngle(yawDeg)).join(', ')} deg.`;
  return `Worst at yaw ${shortAngle(worst.yawDeg)} deg: ${worst.outcome}, least margin ${figure(worst.leastMargin, 3)} m.`;
}

/** How many of each outcome, those that there are. */
export function countOutcomes(rows: readonly TouchdownRow[]): Readonly<Record<string, number>> {
  const counts: Record<string, number> = {};
  for (const { outcome } of rows) counts[outcome] = (counts[outcome] ?? 0) + 1;
  return counts;
}

/** Many yaws for people. */
export function sweepText(
  lander: Lander,
  options: LandingOptions & StateOptions,
  { words }: Landing,
  rows: readonly TouchdownRow[],
): string {
  const { horizontal = 0, descent = 1 } = options;
  const counts = Object.entries(countOutcomes(rows)).map(([outcome, count]) => `${outcome} ${count}`);
  const unsettled = rows.filter(({ unsettledReturns }) => unsettledReturns > 0).length;
  return [
    `${lander.name} ${namePlace(worldOf(options))}, ${horizontal} m/s across and ${descent} m/s down, ${rows.length} yaws: ${counts.join(', ')}.`,
    `On ${words}${describeAttitude(options)}.`,
    worstWords(rows),
    ...(unsettled === 0
      ? []
      : [`Accuracy: in ${unsettled} of them the force of a leg did not settle; do not rely on those.`]),
    '',
    sweepTable(rows),
  ].join('\n');
}

const RIGHT = (heading: string): Column => ({ heading, align: 'right' });

function sweepTable(rows: readonly TouchdownRow[]): string {
  return textTable(
    [
      RIGHT('yaw [deg]'),
      { heading: 'outcome', align: 'left' },
      ...['least margin [m]', 'stroke used [%]', 'peak load [kN]', 'clearance [m]', 'slid [m]', 'leans [deg]'].map(
        RIGHT,
      ),
      { heading: 'limits hit', align: 'left' },
    ],
    rows.map((row) => [
      figure(row.yawDeg, 1),
      row.outcome,
      figure(row.leastMargin, 3),
      figure(row.strokeUsed * 100, 0),
      figure(row.peakLoad / 1000, 2),
      figure(row.clearance ?? undefined, 3),
      figure(row.slide, 2),
      figure(row.restTiltDeg, 1),
      row.limitsHit.join(', '),
    ]),
  );
}
