import type { Command } from 'commander';
import { FIRST_CONTACTS, type ContactCondition, type FirstContact } from '../../engine/pivot/index.ts';
import { findWorld, type World } from '../../engine/worlds.ts';
import { toRadians } from '../../engine/math/index.ts';
import { DEFAULT_STEP_DEG } from './azimuths.ts';
import { addClosedFormSlope, addField, echoFields, type FieldOptions } from './fieldOptions.ts';
import { AZIMUTH_STEP, choiceParser, quantityParser } from './quantity.ts';
import { DEFAULT_FRICTION } from '../../engine/study/index.ts';
import { readWorld } from './readWorld.ts';
import { UsageError } from './usageError.ts';
import { addWorldOptions } from './worldOptions.ts';

const DEFAULT_WORLD = 'moon';

/** The state at contact, in the units of the command line. */
export interface ConditionOptions extends FieldOptions<
  'gravity' | 'slopeDeg' | 'fallAzimuthDeg' | 'descentRate' | 'rateDegPerSecond' | 'friction'
> {
  readonly world?: string;
  readonly firstContact?: FirstContact;
  readonly step?: number;
}

export function addConditionOptions(command: Command): Command {
  addContactOptions(addWorldOptions(command).optionsGroup('State at contact:'));
  command.option(
    '--first-contact <foot>',
    'for the closed forms: foot of a rigid body that meets the ground first, leading or trailing; or together, on legs ' +
      'that crush and take up the descent (default: together for a lander, the worse of leading and trailing for plain geometry)',
    choiceParser(FIRST_CONTACTS),
  );
  return addField(command, 'friction', { otherwise: `default, in the simulation: ${DEFAULT_FRICTION}` })
    .optionsGroup('Output:')
    .option(
      '--step <deg>',
      `between the azimuths of the table; divides 360 (default: ${DEFAULT_STEP_DEG})`,
      quantityParser(AZIMUTH_STEP),
    )
    .option('--csv', 'print the table as CSV');
}

function addContactOptions(command: Command): void {
  addClosedFormSlope(command);
  addField(command, 'fallAzimuthDeg', { note: '; without it the slope goes with every direction of travel' });
  addField(command, 'descentRate', { note: ' at contact' });
  addField(command, 'rateDegPerSecond');
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
    ...echoFields(options, ['slopeDeg', 'fallAzimuthDeg', 'descentRate', 'rateDegPerSecond']),
    firstContact: firstContactOf(options, subject),
    ...echoFields(options, ['friction']),
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
    throw new UsageError('expected --world or --gravity, got both');
  return options.gravity ?? chosenWorld(options).gravity;
}

function chosenWorld({ world }: ConditionOptions): World {
  const chosen = world === undefined ? findWorld(DEFAULT_WORLD) : readWorld('--world', world);
  if (chosen === undefined) throw new Error('the default world is listed');
  return chosen;
}
