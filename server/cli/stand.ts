import { figure, shortAngle } from '../../engine/figures.ts';
import { massProperties, type Lander } from '../../engine/lander/index.ts';
import { atan, toAzimuthDeg, toDegrees, toRadians } from '../../engine/math/index.ts';
import { landerStance, leastStaticTilt, staticTilt, type Standing } from '../../engine/statics/index.ts';
import { tableOf } from '../../engine/csv.ts';
import { echoGeometry, readStandingBody, type StandingBody } from './geometry.ts';
import type { DefineVerb } from './program.ts';
import { AZIMUTH_STEP, quantityParser, STEEPNESS } from './quantity.ts';
import type { Report } from './report.ts';
import { azimuthsDeg, DEFAULT_STEP_DEG } from './azimuths.ts';
import { addSubject, missingIndices, nameLander, readSubject, type SubjectOptions } from './subject.ts';
import { textTable } from './textTable.ts';
import { UsageError } from './usageError.ts';

interface StandOptions extends SubjectOptions {
  readonly slope?: number;
  readonly step?: number;
}

interface TiltRow {
  readonly azimuthDeg: number;
  readonly tiltDeg: number;
  /** Tilt left where the ground falls toward this azimuth; present with a slope. */
  readonly leftDeg?: number;
}

export const defineStand: DefineVerb = (command, deliver) => {
  addSubject(command)
    .description(
      'Static tilt: how far the ground may be tilted, toward each azimuth, before the lander falls. No world enters: it ' +
        'is the same under any gravity.',
    )
    .optionsGroup('Ground:')
    .option(
      '--slope <deg>',
      'slope of the ground; adds the tilt that is left where it falls toward each azimuth',
      quantityParser(STEEPNESS),
    )
    .optionsGroup('Output:')
    .option(
      '--step <deg>',
      'between the azimuths of the table; divides 360 (default: 15)',
      quantityParser(AZIMUTH_STEP),
    )
    .option('--csv', 'print the table as CSV')
    .addHelpText(
      'after',
      `
Azimuths are the lander's own: from body x toward body y. Plain geometry has one direction, called 0.

Examples:
  kilter stand trivet
  kilter stand bolster --slope 8 --step 30
  kilter stand steeple --missing 2 --json
  kilter stand --half-stance 1.5 --center-height 2`,
    )
    .action((word: string | undefined, options: StandOptions) => {
      deliver(reportStanding(word, options));
    });
};

function reportStanding(word: string | undefined, options: StandOptions): Report {
  const subject = readSubject(word, options);
  if (subject.kind === 'geometry' && options.step !== undefined)
    throw new UsageError('--step goes with a lander; plain geometry has one direction');
  if (subject.kind === 'geometry') return reportBody(readStandingBody(options), options);
  const { lander, missing } = subject;
  const stance = landerStance(lander, { missing: missingIndices(missing) });
  const inputs = {
    lander: subject.word,
    missing,
    slopeDeg: options.slope ?? 0,
    stepDeg: options.step ?? DEFAULT_STEP_DEG,
  };
  const name = nameLander(lander, missing);
  if (stance.kind === 'cannotStand') {
    return {
      verb: 'stand',
      inputs,
      results: { stands: false, reason: stance.reason, least: null, byAzimuth: [] },
      text: `${name} does not stand, on any slope: ${stance.reason}.`,
    };
  }
  return reportLander({ lander, name, stance, inputs, options });
}

interface LanderStanding {
  readonly lander: Lander;
  readonly name: string;
  readonly stance: Standing;
  readonly inputs: Report['inputs'];
  readonly options: StandOptions;
}

function reportLander({ lander, name, stance, inputs, options }: LanderStanding): Report {
  const rows = azimuthsDeg(options.step).map((azimuthDeg) =>
    tiltRow(azimuthDeg, toDegrees(staticTilt(stance, toRadians(azimuthDeg))), options.slope),
  );
  const { tilt, azimuth, edge } = leastStaticTilt(stance);
  const { mass } = massProperties(lander);
  const legs = [edge.from + 1, edge.to + 1];
  const least = { ...tiltRow(toAzimuthDeg(azimuth), toDegrees(tilt), options.slope), legs };
  const where = `toward azimuth ${shortAngle(least.azimuthDeg)} deg, over the edge of legs ${legs.join(' and ')}`;
  return {
    verb: 'stand',
    inputs,
    results: { stands: true, mass, centerHeight: edge.height, halfStance: edge.distance, least, byAzimuth: rows },
    text: [
      `${name}: least static tilt ${figure(least.tiltDeg, 2)} deg ${where}.`,
      `Mass ${figure(mass, 0)} kg; center of mass ${figure(edge.height, 3)} m above the footpad plane, ${figure(edge.distance, 3)} m from that edge.`,
      ...slopeLine(least, options.slope),
      '',
      tiltTable(rows, options.slope),
    ].join('\n'),
    csv: tableOf(rows),
  };
}

function reportBody(body: StandingBody, options: StandOptions): Report {
  const tilt = toDegrees(atan(body.halfStance / body.centerHeight));
  const least = tiltRow(0, tilt, options.slope);
  return {
    verb: 'stand',
    inputs: { ...echoGeometry(options), slopeDeg: options.slope ?? 0 },
    results: { stands: true, ...body, least, byAzimuth: [least] },
    text: [`Static tilt ${figure(tilt, 2)} deg over the edge.`, ...slopeLine(least, options.slope)].join('\n'),
    csv: tableOf([least]),
  };
}

function tiltRow(azimuthDeg: number, tiltDeg: number, slope: number | undefined): TiltRow {
  return slope === undefined ? { azimuthDeg, tiltDeg } : { azimuthDeg, tiltDeg, leftDeg: tiltDeg - slope };
}

function slopeLine(least: TiltRow, slope: number | undefined): readonly string[] {
  if (least.leftDeg === undefined || slope === undefined) return [];
  const rest = least.leftDeg > 0 ? `${figure(least.leftDeg, 2)} deg are left` : 'it falls';
  return [`On ground that falls ${slope} deg that way, ${rest}.`];
}

function tiltTable(rows: readonly TiltRow[], slope: number | undefined): string {
  const left = slope === undefined ? [] : [{ heading: 'left on the slope [deg]', align: 'right' } as const];
  return textTable(
    [{ heading: 'azimuth [deg]', align: 'right' }, { heading: 'static tilt [deg]', align: 'right' }, ...left],
    rows.map((row) => [figure(row.azimuthDeg, 1), figure(row.tiltDeg, 2), figure(row.leftDeg, 2)]),
  );
}
