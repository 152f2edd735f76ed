import type { Command } from 'commander';
import { FIRST_CONTACTS, type ContactCondition, type FirstContact } from '../../engine/pivot/index.ts';
import { findWorld, type World } from '../../engine/worlds.ts';
import { toRadians } from './angles.ts';
import { DEFAULT_STEP_DEG } from './azimuths.ts';
import {
  AZIMUTH,
  AZIMUTH_STEP,
  BODY_RATE,
  choiceParser,
  DESCENT_RATE,
  FRICTION,
  quantityParser,
  SLOPE,
} from './quantity.ts';
import { DEFAULT_FRICTION } from './groundOptions.ts';
import { readWorld } from './readWorld.ts';
import { UsageError } from './usageError.ts';
import { addWorldOptions } from './worldOptions.ts';

const DEFAULT_WORLD = 'moon';

/** The state at contact, in the units of the command line. */
export interface ConditionOptions {
  readonly world?: string;
  readonly gravity?: number;
  readonly slope?: number;
  readonly fallAzimuth?: number;
  readonly descent?: number;
  readonly rate?: number;
  readonly firstContact?: FirstContact;
  readonly friction?: number;
  readonly step?: number;
}

export function addConditionOptions(command: Command): Command {
  return addWorldOptions(command)
    .optionsGroup('State at contact:')
    .option(
      '--slope <deg>',
      'slope of the ground, + downhill in the direction of travel (default: 0)',
      quantityParser(SLOPE),
    )
    .option(
      '--fall-azimuth <deg>',
      'azimuth toward which the ground falls; without it the slope goes with every direction of travel',
      quantityParser(AZIMUTH),
    )
    .option('--descent <m/s>', 'descent rate at contact', quantityParser(DESCENT_RATE))
    .option('--rate <deg/s>', 'body rate toward the direction of travel (default: 0)', quantityParser(BODY_RATE))
    .option(
      '--first-contact <foot>',
      'for the closed forms: foot of a rigid body that meets the ground first, leading or trailing; or together, on legs ' +
        'that crush and take up the descent (default: together for a lander, the worse of leading and trailing for plain geometry)',
      choiceParser(FIRST_CONTACTS),
    )
    .option(
      '--friction <ratio>',
      `friction of the ground (default, in the simulation: ${DEFAULT_FRICTION})`,
      quantityParser(FRICTION),
    )
    .optionsGroup('Output:')
    .option(
      '--step <deg>',
      `between the azimuths of the table; divides 360 (default: ${DEFAULT_STEP_DEG})`,
      quantityParser(AZIMUTH_STEP),
    )
    .option('--csv', 'print the table as CSV');
}

/** The first contact asked for; a lander comes down on legs that crush, plain geometry is a rigid body that meets the worse foot first. */
export function firstContactOf(
  { firstContact }: ConditionOptions,
  subject: 'lander' | 'geometry',
): FirstContact | 'worst' {
  return firstContact ?? (subject === 'lander' ? 'together' : 'worst');
}

/** The same for the engine. */
export function readCondition(options: ConditionOptions, subject: 'lander' | 'geometry'): ContactCondition {
  const { slope = 0, descent, rate = 0 } = options;
  const contact = firstContactOf(options, subject);
  return {
    gravity: gravityOf(options),
    slope: toRadians(slope),
    rate: toRadians(rate),
    // the worse of two is found by asking for each
    firstContact: contact === 'worst' ? 'leading' : contact,
    ...(descent === undefined ? {} : { descentRate: descent }),
  };
}

/** What was asked, defaults filled in; null where nothing was said and nothing is assumed. */
export function echoCondition(
  options: ConditionOptions,
  subject: 'lander' | 'geometry',
): Readonly<Record<string, unknown>> {
  return {
    world: options.gravity === undefined ? chosenWorld(options).id : null,
    gravity: gravityOf(options),
    slopeDeg: options.slope ?? 0,
    fallAzimuthDeg: options.fallAzimuth ?? null,
    descentRate: options.descent ?? null,
    rateDegPerSecond: options.rate ?? 0,
    firstContact: firstContactOf(options, subject),
    friction: options.friction ?? null,
  };
}

/** 'on the Moon', 'on Mars', 'at 2 m/s^2'. */
export function namePlace(options: ConditionOptions): string {
  if (options.gravity !== undefined) return `at ${options.gravity} m/s^2`;
  const { id, name } = chosenWorld(options);
  return id === 'moon' ? `on the ${name}` : `on ${name}`;
}

function gravityOf(options: ConditionOptions): number {
  if (options.world !== undefined && options.gravity !== undefined)
    throw new UsageError('expected --world or --gravity, came both');
  return options.gravity ?? chosenWorld(options).gravity;
}

function chosenWorld({ world }: ConditionOptions): World {
  const chosen = world === undefined ? findWorld(DEFAULT_WORLD) : readWorld('--world', world);
  if (chosen === undefined) throw new Error('the default world is listed');
  return chosen;
}
