import { figure, shortAngle } from '../../engine/figures.ts';
import type { RangedShape } from '../../engine/checks/index.ts';
import type { FirstContact } from '../../engine/pivot/index.ts';
import { namePlace, type ConditionOptions } from './condition.ts';
import { tableOf } from '../../engine/csv.ts';
import type { LimitRow } from './limitRow.ts';
import type { Report } from './report.ts';
import { ASSUMED_DESCENT, type LeastTipFields } from '../../engine/study/index.ts';
import { textTable, type Column } from './textTable.ts';
import { tipLines } from './tipWords.ts';

interface LimitFindings {
  readonly name: string;
  readonly inputs: Report['inputs'];
  readonly shape: RangedShape | undefined;
  readonly options: ConditionOptions;
  readonly firstContact: FirstContact | 'worst';
  /** What was assumed, and why closed form and simulation differ. */
  readonly notes?: readonly string[];
  /** The tip limit of a lander, where it was simulated. */
  readonly simulated?: LeastTipFields;
  readonly least: LimitRow;
  /** By azimuth; empty for plain geometry, whose one direction is the least. */
  readonly rows: readonly LimitRow[];
}

export function reportRows(findings: LimitFindings): Report {
  const { name, inputs, options, least, rows, notes = [], simulated } = findings;
  const skid = least.stands ? readSkid(least.criticalFriction, options.friction) : null;
  const byAzimuth = rows.length === 0 ? [least] : rows;
  return {
    verb: 'limit',
    inputs,
    ranged: {
      'trip limit': { ...findings.shape },
      ...(simulated !== undefined && {
        'touchdown simulation': { ...findings.shape, descentRate: options.descent ?? ASSUMED_DESCENT },
      }),
    },
    results: { stands: least.stands, least, byAzimuth, skid, note: notes.length === 0 ? null : notes.join(' ') },
    text: [
      ...(least.stands ? describeLeast(findings, least) : describeFall(findings, least)),
      ...(rows.some((row) => row.stands) ? ['', limitTable(rows, options.slope ?? 0)] : []),
    ].join('\n'),
    csv: tableOf(byAzimuth),
    csvHead: [`${name} ${namePlace(options)}${describeState(options, findings.firstContact)}`, ...notes],
  };
}

type Standing = Extract<LimitRow, { readonly stands: true }>;
type Falling = Extract<LimitRow, { readonly stands: false }>;

function describeLeast(
  { name, options, firstContact, rows, notes = [], simulated }: LimitFindings,
  least: Standing,
): readonly string[] {
  const toward = (azimuthDeg: number): string =>
    rows.length === 0 ? '' : `  toward azimuth ${shortAngle(azimuthDeg)} deg`;
  const edge = least.legs === undefined ? '' : `, over the edge of legs ${least.legs.join(' and ')}`;
  const horizontal = (speed: number | null): string =>
    options.slope === undefined || options.slope === 0 || speed === null
      ? ''
      : `  horizontally ${figure(speed, 3)} m/s`;
  const losslessAt = least.losslessAzimuthDeg ?? least.azimuthDeg;
  const heading = `${name} ${namePlace(options)}${describeState(options, firstContact)}`;
  const closed =
    rows.length === 0
      ? 'Closed form of a rigid body: least speeds along the ground at which it trips'
      : 'Closed forms, feet together, rigid legs (no limit of the lander): least speeds along the ground';
  return [
    heading,
    ...(simulated === undefined ? [] : tipLines(simulated)),
    ...notes,
    closed,
    `  plastic pivot   ${figure(least.plastic, 3)} m/s${horizontal(least.plasticHorizontal)}${toward(least.azimuthDeg)}${edge}`,
    least.lossless === null
      ? `  lossless        none: ${firstContact === 'together' && options.descent !== undefined ? 'crushing legs take up the energy of the descent' : 'descent and rotation alone carry the energy to fall'}`
      : `  lossless        ${figure(least.lossless, 3)} m/s${horizontal(least.losslessHorizontal)}${toward(losslessAt)}`,
    ...(least.plastic < 0 ? ['  A negative limit: it trips even when moving the other way.'] : []),
    `Sliding: it does not overturn while friction stays below ${figure(least.criticalFriction, 3)}.`,
    ...describeFriction(least.criticalFriction, options.friction),
  ];
}

const FIRST_CONTACT_WORDS: { readonly [Contact in FirstContact | 'worst']: string } = {
  together: '',
  leading: ', leading foot first',
  trailing: ', trailing foot first',
  worst: ', the worse foot first',
};

function describeState({ slope, descent, rate }: ConditionOptions, firstContact: FirstContact | 'worst'): string {
  const parts = [
    slope === undefined ? '' : `slope ${slope} deg`,
    descent === undefined ? '' : `descent rate ${descent} m/s${FIRST_CONTACT_WORDS[firstContact]}`,
    rate === undefined ? '' : `body rate ${rate} deg/s`,
  ].filter((part) => part !== '');
  return parts.length === 0 ? ', level ground' : `, ${parts.join(', ')}`;
}

function describeFall({ name, options, rows }: LimitFindings, least: Falling): readonly string[] {
  const { slope = 0, fallAzimuth } = options;
  const downhill = fallAzimuth ?? (slope >= 0 ? least.azimuthDeg : (least.azimuthDeg + 180) % 360);
  const toward = rows.length === 0 ? '' : ` toward azimuth ${shortAngle(downhill)} deg`;
  const ground = `ground that falls ${Math.abs(slope)} deg${toward}`;
  return [`${name} does not stand on ${ground}: it falls at a tilt of ${figure(least.staticTiltDeg, 2)} deg.`];
}

function readSkid(criticalFriction: number, friction: number | undefined): Readonly<Record<string, unknown>> {
  if (friction === undefined) return { criticalFriction };
  return { criticalFriction, friction, overturnsSliding: friction > criticalFriction };
}

function describeFriction(criticalFriction: number, friction: number | undefined): readonly string[] {
  if (friction === undefined) return [];
  return [
    friction > criticalFriction
      ? `With friction ${friction} a slide alone overturns it.`
      : `With friction ${friction} it slides upright until its feet catch; then the limits above hold.`,
  ];
}

function limitTable(rows: readonly LimitRow[], slopeDeg: number): string {
  // on level ground the horizontal speed is the speed along the ground
  const horizontal = slopeDeg === 0 ? [] : ['plastic, horizontal [m/s]', 'lossless, horizontal [m/s]'];
  const isSimulated = rows.some((row) => row.stands && row.tip !== undefined);
  const tip = isSimulated ? ['tip limit [m/s]'] : [];
  const headings = ['azimuth [deg]', ...tip, 'plastic [m/s]', 'lossless [m/s]', ...horizontal, 'critical friction [-]'];
  const columns = headings.map((heading): Column => ({ heading, align: 'right' }));
  return textTable(
    columns,
    rows.map((row) => {
      const azimuth = figure(row.azimuthDeg, 1);
      if (!row.stands) return [azimuth, 'falls over'];
      const across = [figure(row.plasticHorizontal, 3), figure(row.losslessHorizontal ?? undefined, 3)];
      return [
        azimuth,
        ...(isSimulated ? [row.tip === null ? 'none' : figure(row.tip, 3)] : []),
        figure(row.plastic, 3),
        figure(row.lossless ?? undefined, 3),
        ...(horizontal.length === 0 ? [] : across),
        figure(row.criticalFriction, 3),
      ];
    }),
  );
}
