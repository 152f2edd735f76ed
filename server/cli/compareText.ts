import { figure } from '../../engine/figures.ts';
import type { ComparedRow, GearCase, UprightLying } from '../../engine/structure/index.ts';
import { toDegrees } from '../../engine/math/index.ts';
import { namePlace, type ConditionOptions } from './condition.ts';
import { ASSUMED_DESCENT } from '../../engine/study/index.ts';
import { textTable } from './textTable.ts';
import { worldOf } from './worldOptions.ts';

export type CompareOptions = Pick<ConditionOptions, 'world' | 'gravity' | 'slope' | 'descent'>;

/** Upright against lying, for people. */
export function compareText(compared: UprightLying, options: CompareOptions): string {
  const { upright, lying, rows, consequences } = compared;
  return [
    `${upright.name} ${namePlace(worldOf(options))}: upright on ${upright.legs} legs against lying on ${lying.legs}.`,
    `Limits on ${describeState(options)}.`,
    `Tip limit: least horizontal speed at which it tips, simulated at ${options.descent ?? ASSUMED_DESCENT} m/s down over every edge and foot; a dash: at none.`,
    'Trip limits: closed forms, feet together, rigid legs; no limits of a lander.',
    '',
    textTable(
      [
        { heading: 'figure', align: 'left' },
        { heading: 'unit', align: 'left' },
        { heading: 'upright', align: 'right' },
        { heading: 'lying', align: 'right' },
        { heading: 'better', align: 'left' },
      ],
      rows.map(shown),
    ),
    '',
    'Body as a tube while legs crush, worst case first',
    caseTable([
      ...upright.gear.cases.map((found) => ['upright', found] as const),
      ...lying.gear.cases.map((found) => ['lying', found] as const),
    ]),
    '',
    'What no figure shows, lying down:',
    ...consequences.map(({ text }) => `- ${text}`),
  ].join('\n');
}

/** Angles in degrees for people; few figures, since the side legs are an assumption. */
function shown({ quantity, unit, upright, lying, better }: ComparedRow): readonly string[] {
  const isAngle = unit === 'rad';
  const cell = (value: number | undefined): string => {
    if (value === undefined) return '-';
    const scaled = isAngle ? toDegrees(value) : value;
    return figure(scaled, Math.abs(scaled) >= 100 ? 0 : 3);
  };
  return [quantity, isAngle ? 'deg' : unit, cell(upright), cell(lying), better === 'neither' ? '' : better];
}

function describeState({ slope = 0, descent }: CompareOptions): string {
  const ground = slope === 0 ? 'level ground' : `a slope of ${slope} deg`;
  return descent === undefined ? ground : `${ground}, descent rate ${descent} m/s`;
}

function caseTable(cases: readonly (readonly [string, GearCase])[]): string {
  return textTable(
    [
      { heading: 'side', align: 'left' },
      { heading: 'case', align: 'left' },
      { heading: 'push [m/s^2]', align: 'right' },
      { heading: 'moment [kN m]', align: 'right' },
      { heading: 'shear [kN]', align: 'right' },
      { heading: 'thrust [kN]', align: 'right' },
      { heading: 'of yield [-]', align: 'right' },
      { heading: 'of buckling [-]', align: 'right' },
    ],
    cases.map(([side, found]) => [
      side,
      found.name,
      figure(found.acceleration, 2),
      figure(found.moment / 1000, 1),
      figure(found.shear / 1000, 1),
      figure(found.compression / 1000, 1),
      figure(found.yieldUse, 3),
      figure(found.bucklingUse, 3),
    ]),
  );
}
