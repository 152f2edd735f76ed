import { figure } from '../../engine/figures.ts';
import { WIDEST } from '../../engine/pivot/index.ts';
import { ASSUMED_DESCENT, type StanceRow } from '../../engine/study/index.ts';
import { textTable, type Column } from './textTable.ts';

/** What the two kinds of figure are. */
const STANCE_NOTE =
  'The half stances are closed forms: feet together on rigid legs, no stance that a lander needs. The tip limit is that of ' +
  `the lander as it is, simulated at ${ASSUMED_DESCENT} m/s down over every edge and foot, horizontal.`;

/** World by world for people, and what the figures are. */
export function stanceLines(rows: readonly StanceRow[]): readonly string[] {
  return [
    stanceTable(rows),
    ...(rows.some(isSimulated) ? ['', STANCE_NOTE] : []),
    ...(rows.some(hasGap)
      ? ['', `A dash: no half stance up to ${WIDEST} times the height of the center of mass will do.`]
      : []),
  ];
}

function isSimulated({ tip }: StanceRow): boolean {
  return tip !== undefined;
}

function hasGap({ halfStance, halfStanceLossless }: StanceRow): boolean {
  return halfStance === null || halfStanceLossless === null;
}

function stanceTable(rows: readonly StanceRow[]): string {
  const withTip = rows.some(isSimulated);
  const columns: readonly Column[] = [
    { heading: 'world', align: 'left' },
    { heading: 'gravity [m/s^2]', align: 'right' },
    { heading: 'half stance, plastic [m]', align: 'right' },
    { heading: 'of Earth [-]', align: 'right' },
    { heading: 'half stance, lossless [m]', align: 'right' },
    { heading: 'of Earth [-]', align: 'right' },
    ...(withTip ? [{ heading: 'tip limit [m/s]', align: 'right' } as const] : []),
  ];
  return textTable(
    columns,
    rows.map((row) => [
      row.world,
      figure(row.gravity, 5),
      figure(row.halfStance ?? undefined, 3),
      figure(row.ratioToEarth ?? undefined, 3),
      figure(row.halfStanceLossless ?? undefined, 3),
      figure(row.ratioToEarthLossless ?? undefined, 3),
      ...(withTip ? [row.tip === null ? 'none' : figure(row.tip, 3)] : []),
    ]),
  );
}
