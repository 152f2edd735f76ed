import { figure } from '../../engine/figures.ts';
import { landerShape, rangedShape } from '../../engine/checks/index.ts';
import { massProperties } from '../../engine/lander/index.ts';
import { pivotBodyOver, tripLimit, tripLimitByAzimuth, type PivotBody } from '../../engine/pivot/index.ts';
import { landerStance } from '../../engine/statics/index.ts';
import type { World } from '../../engine/worlds.ts';
import { toRadians } from '../../engine/math/index.ts';
import { tableOf } from '../../engine/csv.ts';
import { addClosedFormSlope } from './fieldOptions.ts';
import { readPivotBody } from './geometry.ts';
import type { DefineVerb } from './program.ts';
import { quantityParser, SPEED, textParser } from './quantity.ts';
import { readWorlds, WORLD_IDS } from './readWorld.ts';
import type { Report } from './report.ts';
import { ASSUMED_DESCENT, earth, simulatedArrivals, stanceByWorld, type StanceRow } from '../../engine/study/index.ts';
import { addSubject, missingIndices, nameLander, readSubject, type Subject, type SubjectOptions } from './subject.ts';
import { stanceLines } from './stanceText.ts';
import { UsageError } from './usageError.ts';

interface StanceOptions extends SubjectOptions {
  readonly speed?: number;
  readonly worlds?: string;
  readonly slope?: number;
}

type LanderSubject = Extract<Subject, { readonly kind: 'lander' }>;

const DEFAULT_WORLDS = 'moon,mars,earth';

export const defineStance: DefineVerb = (command, deliver) => {
  addSubject(command)
    .description(
      'Half stance (foot point of the center of mass to the tip edge) at which a speed is just borne, world by world. ' +
        'Mass, inertia and height of the center of mass stay as they are while the feet move.',
    )
    .optionsGroup('Asked for:')
    .option(
      '--speed <m/s>',
      "speed along the ground that must not trip it (default: the body's own plastic limit on Earth)",
      quantityParser(SPEED),
    )
    .option('--worlds <names>', `several of ${WORLD_IDS} (default: ${DEFAULT_WORLDS})`, textParser);
  addClosedFormSlope(command)
    .optionsGroup('Output:')
    .option('--csv', 'print the table as CSV')
    .addHelpText(
      'after',
      `
A lander is taken over the edge that trips first.

Examples:
  kilter stance trivet
  kilter stance trivet --speed 1.5 --worlds moon,earth
  kilter stance --half-stance 0.9 --center-height 2 --mass 1000 --inertia 0 --json`,
    )
    .action((word: string | undefined, options: StanceOptions) => {
      deliver(reportStance(word, options));
    });
};

function reportStance(word: string | undefined, options: StanceOptions): Report {
  const worlds = readWorlds('--worlds', options.worlds ?? DEFAULT_WORLDS);
  const subject = readSubject(word, options);
  const body = subject.kind === 'geometry' ? readPivotBody(options) : tippingBody(subject);
  const slopeDeg = options.slope ?? 0;
  const speed = options.speed ?? ownLimitOnEarth(body, slopeDeg);
  const rows = stanceByWorld({ body, speed, slopeDeg, worlds }).map((row) =>
    subject.kind === 'geometry' ? row : { ...row, tip: tipOn(subject, row.gravity, slopeDeg) },
  );
  const name = subject.kind === 'geometry' ? 'This geometry' : nameLander(subject.lander, subject.missing);
  return {
    verb: 'stance',
    inputs: {
      ...(subject.kind === 'geometry' ? body : { lander: subject.word, missing: subject.missing }),
      speed: options.speed ?? null,
      worlds: worlds.map((world) => world.id),
      slopeDeg,
    },
    ranged: {
      'trip limit': rangedOver(body, rows),
      ...(subject.kind === 'lander' && { 'touchdown simulation': rangedLander(subject, worlds) }),
    },
    results: { speed, body, worlds: rows },
    text: [
      `${name}: half stance at which ${figure(speed, 3)} m/s along the ground is just borne` +
        (options.speed === undefined ? ' (its own plastic limit on Earth)' : ''),
      `Half stance now ${figure(body.halfStance, 3)} m, center of mass ${figure(body.centerHeight, 3)} m up, slope ${slopeDeg} deg.`,
      '',
      ...stanceLines(rows),
    ].join('\n'),
    csv: tableOf(rows),
  };
}

function tipOn({ lander, missing }: LanderSubject, gravity: number, slopeDeg: number): number | null {
  const arrivals = simulatedArrivals({ lander, gravity, slopeDeg, missing: missingIndices(missing) });
  if (typeof arrivals === 'string') throw new UsageError(`${lander.name} cannot be simulated: ${arrivals}`);
  return arrivals.least().tip;
}

/** A lander over the edge that trips first on level ground; which one that is does not depend on the world. */
function tippingBody({ lander, missing }: LanderSubject): PivotBody {
  const stance = landerStance(lander, { missing: missingIndices(missing) });
  if (stance.kind === 'cannotStand')
    throw new UsageError(`${nameLander(lander, missing)} does not stand: ${stance.reason}`);
  const bulk = massProperties(lander);
  const { least } = tripLimitByAzimuth(stance, bulk, { gravity: earth().gravity, slope: 0 });
  const edge = least.kind === 'limit' ? stance.edges.find(({ from }) => from === least.plastic.from) : undefined;
  if (edge === undefined) throw new Error('a lander that stands trips over one of its edges');
  const { mass, halfStance, centerHeight, inertia } = pivotBodyOver(edge, stance, bulk);
  return { mass, halfStance, centerHeight, inertia };
}

function ownLimitOnEarth(body: PivotBody, slopeDeg: number): number {
  const limit = tripLimit(body, { gravity: earth().gravity, slope: toRadians(slopeDeg) });
  if (limit.kind === 'limit') return limit.plastic.alongGround;
  throw new UsageError(`it does not stand on a slope of ${slopeDeg} deg, so it has no limit of its own: give --speed`);
}

/** Every stance and every gravity that the trip limit was asked about. */
function rangedOver(body: PivotBody, rows: readonly StanceRow[]): Readonly<Record<string, unknown>> {
  const wanted = rows.flatMap(({ halfStance }) => (halfStance === null ? [] : [{ ...body, halfStance }]));
  const shapes = [body, ...wanted].map(rangedShape);
  return {
    gravity: rows.map(({ gravity }) => gravity),
    stanceOverHeight: shapes.map(({ stanceOverHeight }) => stanceOverHeight),
    inertiaShare: shapes.map(({ inertiaShare }) => inertiaShare),
  };
}

/** The lander as it is, on every world, as its tip limit was simulated. */
function rangedLander({ lander, missing }: LanderSubject, worlds: readonly World[]): Readonly<Record<string, unknown>> {
  return {
    gravity: worlds.map(({ gravity }) => gravity),
    descentRate: ASSUMED_DESCENT,
    ...landerShape(lander, missingIndices(missing)),
  };
}
