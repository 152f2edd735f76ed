import { rangedShape, type RangedShape } from '../../engine/checks/index.ts';
import type { Lander } from '../../engine/lander/index.ts';
import {
  compareUprightLying,
  isLying,
  layOnSide,
  type ComparedRow,
  type LanderAssessment,
  type UprightLying,
} from '../../engine/structure/index.ts';
import { toRadians } from '../../engine/math/index.ts';
import { compareText, type CompareOptions } from './compareText.ts';
import { echoCondition, readCondition } from './condition.ts';
import { tableOf } from '../../engine/csv.ts';
import { addClosedFormSlope, addField, echoFields } from './fieldOptions.ts';
import { addWorldOptions, worldOf } from './worldOptions.ts';
import type { DefineVerb } from './program.ts';
import { readLander } from './readLander.ts';
import type { Report } from './report.ts';
import { ASSUMED_DESCENT, simulatedArrivals } from '../../engine/study/index.ts';
import { UsageError } from './usageError.ts';

export const defineCompare: DefineVerb = (command, deliver) => {
  addWorldOptions(
    command.argument(
      '<lander>',
      'built-in lander (trivet, steeple) or the path of a lander file; one that stands upright',
    ),
  ).optionsGroup('State at contact:');
  addField(addClosedFormSlope(command), 'descentRate', { note: ' at contact' })
    .optionsGroup('Output:')
    .option('--csv', 'print the table of figures as CSV')
    .description(
      'Upright against lying: the same lander on its legs and laid on its side on rows of side legs, figure by figure, with ' +
        'what lying down buys and what it costs.',
    )
    .addHelpText(
      'after',
      `
The side legs are proportions of ours; the body is taken as a thin tube with a wall of ours. The tip limit is simulated, trip limits are closed forms.

Examples:
  kilter compare steeple
  kilter compare trivet --world mars --slope 5 --json`,
    )
    .action((word: string, options: CompareOptions) => {
      deliver(reportComparison(word, options));
    });
};

function reportComparison(word: string, options: CompareOptions): Report {
  const lander = readLander(word);
  if (isLying(lander))
    throw new UsageError(`${lander.name} lies on its side already: its hull is longer along y than it is high`);
  const { gravity } = readCondition(worldOf(options), 'lander');
  const compared = compareUprightLying(lander, {
    gravity,
    slope: toRadians(options.slope ?? 0),
    ...(options.descent !== undefined && { descentRate: options.descent }),
  });
  const tip = simulatedRow([lander, layOnSide(lander, compared.sideLegs)], { gravity, ...options });
  const rows = [tip, ...compared.rows];
  const { world } = echoCondition(worldOf(options), 'lander');
  const inputs = { lander: word, world, gravity, ...echoFields(options, ['slopeDeg', 'descentRate']) };
  const sides = [compared.upright, compared.lying].flatMap(shapeOf);
  const shapes = {
    stanceOverHeight: sides.map(({ stanceOverHeight }) => stanceOverHeight),
    inertiaShare: sides.map(({ inertiaShare }) => inertiaShare),
  };
  return {
    verb: 'compare',
    inputs,
    ranged: {
      'trip limit': shapes,
      'touchdown simulation': { ...shapes, descentRate: options.descent ?? ASSUMED_DESCENT },
      structure: { supports: compared.sideLegs.stations.length },
    },
    results: resultsOf({ ...compared, rows }),
    text: compareText({ ...compared, rows }, options),
    csv: tableOf(rows.map(plainRow)),
  };
}

interface SimulatedLanding {
  readonly gravity: number;
  readonly slope?: number;
  readonly descent?: number;
}

/** The tip limit upright and lying, least over all critical azimuths; undefined where it tips at no speed looked at, or cannot be simulated. */
function simulatedRow(landers: readonly [Lander, Lander], { gravity, slope, descent }: SimulatedLanding): ComparedRow {
  const [upright, lying] = landers.map((lander) => {
    const arrivals = simulatedArrivals({ lander, gravity, slopeDeg: slope, descentRate: descent });
    if (typeof arrivals === 'string') throw new UsageError(`${lander.name} cannot be simulated: ${arrivals}`);
    return arrivals.least().tip ?? undefined;
  });
  const more = (upright ?? Infinity) - (lying ?? Infinity);
  const better = more > 0 ? 'upright' : more < 0 ? 'lying' : 'neither';
  return { quantity: 'tip limit, simulated', unit: 'm/s', upright, lying, better };
}

function shapeOf({ standing, mass, centerHeight }: LanderAssessment): readonly RangedShape[] {
  if (standing === undefined) return [];
  return [rangedShape({ mass, centerHeight, halfStance: standing.leastHalfStance, inertia: standing.inertia })];
}

function resultsOf({ upright, lying, sideLegs, rows, consequences }: UprightLying): Report['results'] {
  return {
    rows: rows.map(plainRow),
    buys: rows.filter(({ better }) => better === 'lying').map(({ quantity }) => quantity),
    costs: rows.filter(({ better }) => better === 'upright').map(({ quantity }) => quantity),
    consequences,
    sideLegs,
    upright: plainSide(upright),
    lying: plainSide(lying),
  };
}

function plainRow({ quantity, unit, upright, lying, better }: ComparedRow): Readonly<Record<string, unknown>> {
  return { quantity, unit, upright: upright ?? null, lying: lying ?? null, better };
}

function plainSide({ id, name, legs, gear }: LanderAssessment): Readonly<Record<string, unknown>> {
  return { id, name, legs, tube: gear.tube, cases: gear.cases };
}
