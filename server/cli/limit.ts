import { landerShape, rangedShape } from '../../engine/checks/index.ts';
import { massProperties } from '../../engine/lander/index.ts';
import { tripLimit, tripLimitByAzimuth, tripLimitToward } from '../../engine/pivot/index.ts';
import { landerStance } from '../../engine/statics/index.ts';
import { toRadians } from './angles.ts';
import { azimuthsDeg } from './azimuths.ts';
import { addConditionOptions, echoCondition, readCondition, type ConditionOptions } from './condition.ts';
import { readPivotBody } from './geometry.ts';
import { leastRow, limitRow } from './limitRow.ts';
import { reportRows } from './limitReport.ts';
import type { DefineVerb } from './program.ts';
import type { Report } from './report.ts';
import { simulatedNotes } from './simulatedNotes.ts';
import { addSubject, missingIndices, nameLander, readSubject, type SubjectOptions } from './subject.ts';
import { UsageError } from './usageError.ts';

type LimitOptions = SubjectOptions & ConditionOptions;

export const defineLimit: DefineVerb = (command, deliver) => {
  addConditionOptions(addSubject(command))
    .description(
      'Speed limit: how fast the lander may move when its feet catch before it trips over them. Plastic: the feet stop ' +
        'dead and the body turns about them. Lossless: all energy of motion lifts the center of mass; the cautious bound.',
    )
    .addHelpText(
      'after',
      `
Speeds are along the ground; on a slope their horizontal components are given too. Without --descent the lander slides
along the ground with no closing speed. Azimuths are the lander's own: from body x toward body y. Plain geometry has one
direction, called 0. Below the critical friction a sliding lander does not overturn.

Examples:
  kilter limit trivet
  kilter limit steeple --world mars --slope 5 --descent 2
  kilter limit bolster --slope 8 --fall-azimuth 90 --json
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
    if (options.fallAzimuth !== undefined || options.step !== undefined)
      throw new UsageError('--fall-azimuth and --step go with a lander; plain geometry has one direction');
    const body = readPivotBody(options);
    const row = limitRow(0, tripLimit(body, condition));
    const inputs = { ...body, ...echo };
    return reportRows({
      name: 'This geometry',
      inputs,
      shape: rangedShape(body),
      options,
      firstContact: condition.firstContact,
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
    return { verb: 'limit', inputs, results, text: `${name} does not stand, on any slope: ${stance.reason}.` };
  }
  const fall = options.fallAzimuth === undefined ? {} : { fallAzimuth: toRadians(options.fallAzimuth) };
  const travel = { ...condition, ...fall };
  const bulk = massProperties(lander);
  const rows = azimuthsDeg(options.step).map((azimuthDeg) =>
    limitRow(azimuthDeg, tripLimitToward(stance, bulk, travel, toRadians(azimuthDeg))),
  );
  const least = leastRow(tripLimitByAzimuth(stance, bulk, travel).least);
  const notes = simulatedNotes(
    {
      lander,
      gravity: condition.gravity,
      slopeDeg: options.slope ?? 0,
      fallAzimuthDeg: options.fallAzimuth,
      descentRate: condition.descentRate,
      rate: options.rate,
      friction: options.friction,
      missing: missingIndices(missing),
    },
    least,
  );
  const shape = landerShape(lander, missingIndices(missing));
  return reportRows({ name, inputs, shape, options, firstContact: condition.firstContact, least, rows, notes });
}
