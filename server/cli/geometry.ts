import type { Command } from 'commander';
import type { PivotBody } from '../../engine/pivot/index.ts';
import { quantityOf } from './fieldOptions.ts';
import { INERTIA, LENGTH, quantityParser } from './quantity.ts';
import { UsageError } from './usageError.ts';

/** Plain geometry as the options bring it: a body seen along one tip edge. */
export interface GeometryOptions {
  readonly halfStance?: number;
  readonly centerHeight?: number;
  readonly mass?: number;
  readonly inertia?: number;
}

/**
 * Largest radius of gyration, over the distance from center of mass to edge [-]. A body whose mass lies ten times farther
 * out than its feet is a slip of units.
 */
const WIDEST_GYRATION = 10;

const FLAGS = {
  halfStance: '--half-stance',
  centerHeight: '--center-height',
  mass: '--mass',
  inertia: '--inertia',
} as const satisfies Record<keyof GeometryOptions, string>;

const NAMES = ['halfStance', 'centerHeight', 'mass', 'inertia'] as const;

/** What tilting alone needs: where the edge is and how high the center of mass stands. */
export type StandingBody = Pick<PivotBody, 'halfStance' | 'centerHeight'>;

/** The options of plain geometry, in place of a lander. */
export function addGeometryOptions(command: Command): Command {
  return command
    .optionsGroup('Plain geometry, in place of a lander:')
    .option(`${FLAGS.halfStance} <m>`, 'foot point of the center of mass to the tip edge', quantityParser(LENGTH))
    .option(`${FLAGS.centerHeight} <m>`, 'center of mass above the footpad plane', quantityParser(LENGTH))
    .option(`${FLAGS.mass} <kg>`, 'mass', quantityParser(quantityOf('mass')))
    .option(
      `${FLAGS.inertia} <kg m^2>`,
      'moment of inertia about the center of mass, along the edge; 0 is a point mass',
      quantityParser(INERTIA),
    );
}

export function hasGeometry(options: GeometryOptions): boolean {
  return NAMES.some((name) => options[name] !== undefined);
}

/** A body that can be tilted. Mass and inertia may be given; tilting does not need them. */
export function readStandingBody(options: GeometryOptions): StandingBody {
  const { halfStance, centerHeight } = options;
  if (halfStance === undefined || centerHeight === undefined) throw missing(options, ['halfStance', 'centerHeight']);
  return { halfStance, centerHeight };
}

/** The options of plain geometry that were given, for the echo of inputs. */
export function echoGeometry(options: GeometryOptions): GeometryOptions {
  return Object.fromEntries(NAMES.flatMap((name) => (options[name] === undefined ? [] : [[name, options[name]]])));
}

/** A body that can trip. */
export function readPivotBody(options: GeometryOptions): PivotBody {
  const { halfStance, centerHeight, mass, inertia } = options;
  if (halfStance === undefined || centerHeight === undefined || mass === undefined || inertia === undefined)
    throw missing(options, NAMES);
  const reach = Math.sqrt(halfStance * halfStance + centerHeight * centerHeight);
  const most = Number((mass * (WIDEST_GYRATION * reach) ** 2).toPrecision(3));
  if (inertia > most)
    throw new UsageError(
      `${FLAGS.inertia}: expected at most ${most} kg m^2 for this mass and size, got ${inertia}; are the units right?`,
    );
  return { halfStance, centerHeight, mass, inertia };
}

function missing(options: GeometryOptions, needed: readonly (keyof GeometryOptions)[]): UsageError {
  const absent = needed.filter((name) => options[name] === undefined).map((name) => FLAGS[name]);
  return new UsageError(`plain geometry also needs ${absent.join(', ')}`);
}
