import { landerShape, rangedShape } from '../../engine/checks/index.ts';
import { massProperties } from '../../engine/lander/index.ts';
import { tripLimit, tripLimitByAzimuth, tripLimitToward } from '../../engine/pivot/index.ts';
import { landerStance } from '../../engine/statics/index.ts';
import { toRadians } from '../../engine/math/index.ts';
import { azimuthsDeg } from './azimuths.ts';
import {
  addConditionOptions,
  echoCondition,
  firstContactOf,
  readCondition,
  type ConditionOptions,
} from './condition.ts';
import { readPivotBody } from './geometry.ts';
import { leastRow, limitRow, type LimitRow } from './limitRow.ts';
import { reportRows } from './limitReport.ts';
import type { DefineVerb } from './program.ts';
import type { Report } from './report.ts';
import { type ArrivalQuestion, ASSUMED_DESCENT, simulatedArrivals } from '../../engine/study/index.ts';
import { whyDifferent } from './tipWords.ts';
import { addSubject, missingIndices, nameLander, readSubject, type SubjectOptions } from './subject.ts';
import { UsageError } from './usageError.ts';

interface LimitOptions extends SubjectOptions, ConditionOptions {
  readonly closedForm?: boolean;
}

export const defineLimit: DefineVerb = (command, deliver) => {
  addConditionOptions(addSubject(command))
    .option(
      '--closed-form',
      'the closed forms alone (feet together, rigid legs), at once; they are no limit of a lander',
    )
    .description(
      'Tip limit: the least horizontal speed at which the lander tips in the touchdown simulation, over every edge and foot, ' +
        'at the friction of the ground and at the highest plausible one. Beside it the closed forms, all feet together on ' +
        'rigid legs. On the slopes on which a tall lander just rocks back, the assumed damping moves its tip limit by 0.1 to 0.2 m/s. Plastic: the feet stop dead and the body turns about them. Lossless: all energy of motion lifts the ' +
        'center of mass.',
    )
    .addHelpText(
      'after',
      `
The lander arrives upright. Without --descent the simulation comes down at ${ASSUMED_DESCENT} m/s, and the closed forms slide along
the ground with no closing speed. Closed forms are speeds along the ground; on a slope their horizontal components are
given too. Azimuths are the lander's own: from body x toward body y. Plain geometry has one
direction, called 0. Below the critical friction a sliding lander does not overturn.

Examples:
  kilter limit trivet --step 45
  kilter limit trivet --world mars --slope 5 --descent 2 --step 90
  kilter limit bolster --slope 8 --fall-azimuth 90 --closed-form --json
  kilter limit --half-stance 1.5 --center-height 2 --mass 1000 --inertia 1500 --gravity 1.62`,
    )
    .action((word: string | undefined, options: LimitOptions) => {
      deliver(reportLimit(word, options));
    });
};

function reportLimit(word: string | undefined, options: LimitOptions): Report {
  // options that do not go together are refused before a file is opened
  const kind = word === undefined ? 'geometry' : 'lander';
  const condition = readCondition(options, kind);
  const echo = echoCondition(options, kind);
  const subject = readSubject(word, options);
  if (subject.kind === 'geometry') {
    if (options.closedForm === true)
      throw new UsageError('--closed-form goes with a lander; plain geometry has nothing else');
    if (options.fallAzimuth !== undefined || options.step !== undefined)
      throw new UsageError('--fall-azimuth and --step go with a lander; plain geometry has one direction');
    const body = readPivotBody(options);
    // which foot of a rigid body meets the ground first is not known: the worse of the two
    const feet = options.firstContact === undefined ? (['leading', 'trailing'] as const) : [options.firstContact];
    const row = worstOf(feet.map((firstContact) => limitRow(0, tripLimit(body, { ...condition, firstContact }))));
    const inputs = { ...body, ...echo };
    return reportRows({
      name: 'This geometry',
      inputs,
      shape: rangedShape(body),
      options,
      firstContact: firstContactOf(options, kind),
      least: row,
      rows: [],
    });
  }

  const { lander, missing } = subject;
  const name = nameLander(lander, missing);
  const inputs = { lander: subject.word, missing, ...echo };
  const stance = landerStance(lander, { missing: missingIndices(missing) });
  if (stance.kind === 'cannotStand') {
    const results = { stands: false, reason: stance.reason, least: null, byAzimuth: [], skid: null };
    return {
      verb: 'limit',
      inputs,
      ranged: { 'trip limit': {} },
      results,
      text: `${name} does not stand, on any slope: ${stance.reason}.`,
    };
  }
  const fall = options.fallAzimuth === undefined ? {} : { fallAzimuth: toRadians(options.fallAzimuth) };
  const travel = { ...condition, ...fall };
  const bulk = massProperties(lander);
  const azimuths = azimuthsDeg(options.step);
  const closed = azimuths.map((azimuthDeg) =>
    limitRow(azimuthDeg, tripLimitToward(stance, bulk, travel, toRadians(azimuthDeg))),
  );
  const least = leastRow(tripLimitByAzimuth(stance, bulk, travel).least);
  const findings = {
    name,
    inputs,
    shape: landerShape(lander, missingIndices(missing)),
    options,
    firstContact: firstContactOf(options, kind),
  };
  if (options.closedForm === true || !least.stands) return reportRows({ ...findings, least, rows: closed });

  const question: ArrivalQuestion = {
    lander,
    gravity: condition.gravity,
    slopeDeg: options.slope,
    fallAzimuthDeg: options.fallAzimuth,
    descentRate: options.descent,
    rate: options.rate,
    friction: options.friction,
    missing: missingIndices(missing),
  };
  const arrivals = simulatedArrivals(question);
  if (typeof arrivals === 'string') {
    const notes = [`Not simulated: ${arrivals}. The closed forms are no limit of the lander.`];
    return reportRows({ ...findings, least, rows: closed, notes });
  }
  const simulated = arrivals.least();
  const arrival = { slopeDeg: options.slope ?? 0, descentRate: options.descent ?? ASSUMED_DESCENT };
  const why = whyDifferent(arrivals, simulated, least.plasticHorizontal, arrival);
  const assumed =
    options.descent === undefined
      ? [
          `Warning: no --descent given; the simulation comes down at ${ASSUMED_DESCENT} m/s, the closed forms slide with none.`,
        ]
      : [];
  return reportRows({
    ...findings,
    least: { ...least, ...simulated },
    rows: closed.map((row) => (row.stands ? { ...row, ...arrivals.toward(row.azimuthDeg) } : row)),
    notes: [...assumed, ...(why === undefined ? [] : [why])],
    simulated,
  });
}

function worstOf(rows: readonly LimitRow[]): LimitRow {
  return rows.reduce((worst, row) =>
    row.stands && worst.stands && row.plasticHorizontal < worst.plasticHorizontal ? row : worst,
  );
}
