import { figure } from '../../engine/figures.ts';
import { massProperties, tankLiquid, type Lander } from '../../engine/lander/index.ts';
import { landerPlot } from '../../engine/plot/index.ts';
import type { BoardFindings } from './boardFindings.ts';
import type { BoardQuestion } from './boardQuestion.ts';
import { paragraph, type Sheet, type SheetColumn } from './sheet.ts';

const COLUMNS: readonly SheetColumn[] = [
  { heading: 'quantity' },
  { heading: 'value', align: 'right' },
  { heading: 'unit' },
];

/** Drawing and data. */
export function landerPart({ asked, name }: BoardQuestion, { rigid }: BoardFindings, sheet: Sheet): string {
  const { lander, missing } = asked;
  return [
    paragraph(lander.summary),
    sheet.figure(
      landerPlot({ lander, missing, label: `${name}, from the side and from above` }),
      'The lander as it lands, one scale. Tanks dashed, with their propellant; the sign is the center of mass; pencil in the view from above: the footprint. Legs are numbered in the order of the file.',
    ),
    sheet.table({ caption: 'The lander.', columns: COLUMNS, rows: [...bulkRows(lander, rigid), ...gearRows(lander)] }),
    sheet.table({
      caption: 'Where its mass is. z counts from the footpad plane, x and y from the long axis.',
      columns: [
        { heading: 'part' },
        { heading: 'kind' },
        { heading: 'mass [kg]', align: 'right' },
        { heading: 'x [m]', align: 'right' },
        { heading: 'y [m]', align: 'right' },
        { heading: 'z [m]', align: 'right' },
      ],
      rows: massRows(lander),
    }),
  ].join('\n');
}

type Row = readonly [quantity: string, value: string, unit: string];

function bulkRows(lander: Lander, { halfStance }: BoardFindings['rigid']): readonly Row[] {
  const { mass, center, inertia } = massProperties(lander);
  const propellant = lander.tanks.reduce((sum, tank) => sum + tankLiquid(tank).mass, 0);
  return [
    ['mass with propellant', figure(mass, 0), 'kg'],
    ['of which propellant', figure(propellant, 0), 'kg'],
    ['height of the center of mass', figure(center[2], 2), 'm'],
    ['half stance: center of mass to the nearest tip edge, level', figure(halfStance, 2), 'm'],
    ['half stance over height', figure(halfStance / center[2], 2), '-'],
    ['inertia about the center of mass, x, y, z', inertiaWords(inertia), 'kg m^2'],
  ];
}

function inertiaWords({ xx, yy, zz }: ReturnType<typeof massProperties>['inertia']): string {
  return [xx, yy, zz].map((moment) => figure(moment, 0)).join(', ');
}

function gearRows({ legs, engine, probeLength }: Lander): readonly Row[] {
  const [leg] = legs;
  if (leg === undefined) return [];
  return [
    ['legs', String(legs.length), '-'],
    ...leg.stages.map(({ force, stroke }, i): Row => [
      `crush stage ${i + 1} of a leg: force, stroke`,
      `${figure(force, 0)}, ${figure(stroke, 2)}`,
      'N, m',
    ]),
    ['footpad, across', figure(leg.footpadDiameter, 2), 'm'],
    ['engine: least and most thrust', `${figure(engine.minThrust, 0)}, ${figure(engine.maxThrust, 0)}`, 'N'],
    ['contact probe below the footpads', figure(probeLength, 2), 'm'],
  ];
}

function massRows(lander: Lander): readonly (readonly string[])[] {
  return [
    ...lander.parts.map(({ name, kind, mass, center }) => massRow(name, kind, mass, center)),
    ...lander.tanks.map((tank) => {
      const { mass, center } = tankLiquid(tank);
      return massRow(`${tank.name}, ${figure(100 * tank.fill, 0)} % full`, 'propellant', mass, center);
    }),
  ];
}

function massRow(name: string, kind: string, mass: number, center: readonly number[]): readonly string[] {
  return [name, kind, figure(mass, 0), ...center.map((value) => figure(value, 2))];
}
