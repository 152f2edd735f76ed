import type { Command } from 'commander';
import type { Lander, LegCondition, Soil, TouchdownConditions } from '../../engine/index.ts';
import { toRadians } from './angles.ts';
import { echoCondition, readCondition, type ConditionOptions } from './condition.ts';
import { AZIMUTH, FRICTION, GRAVITY, legNumbersParser, quantityParser, textParser, type Quantity } from './quantity.ts';
import { WORLD_IDS } from './readWorld.ts';
import { UsageError } from './usageError.ts';

/** World, ground and gear of a simulated touchdown, in the units of the command line. */
export interface LandingOptions extends Pick<ConditionOptions, 'world' | 'gravity' | 'slope' | 'friction'> {
  readonly slopeAzimuth?: number;
  readonly soilStiffness?: number;
  readonly soilStrength?: number;
  readonly missing?: readonly number[];
  readonly soft?: readonly number[];
  readonly softFactor?: number;
  readonly unlatched?: readonly number[];
}

const GROUND_SLOPE: Quantity = { unit: 'deg', least: -60, most: 60 };
const SOFTNESS: Quantity = { unit: '', least: 0.01, most: 10 };
const SOIL_STIFFNESS: Quantity = { unit: 'N/m', least: 1e3, most: 1e9 };
const SOIL_STRENGTH: Quantity = { unit: 'Pa', least: 1, most: 1e9 };

/** Friction under footpads and hull where nothing is said [-]. Common practice for rock and dry soil, no source. */
export const DEFAULT_FRICTION = 0.8;
/** What is left of the crush forces of a leg named soft, where nothing is said [-]. */
const DEFAULT_SOFT_FACTOR = 0.5;

export function addWorldOptions(command: Command): Command {
  return command
    .option('--world <name>', `one of ${WORLD_IDS} (default: moon)`, textParser)
    .option('--gravity <m/s^2>', 'gravity, in place of a world', quantityParser(GRAVITY));
}

export function addLandingOptions(command: Command): Command {
  return addWorldOptions(command)
    .option(
      '--slope <deg>',
      'slope of the ground, + downhill in the direction of travel (default: 0)',
      quantityParser(GROUND_SLOPE),
    )
    .option(
      '--slope-azimuth <deg>',
      'azimuth toward which that slope falls, from the direction of travel (default: 0)',
      quantityParser(AZIMUTH),
    )
    .option('--friction <ratio>', `friction of the ground (default: ${DEFAULT_FRICTION})`, quantityParser(FRICTION))
    .option(
      '--soil-stiffness <N/m>',
      'soil under one footpad; without it the ground is rigid',
      quantityParser(SOIL_STIFFNESS),
    )
    .option('--soil-strength <Pa>', 'bearing strength of that soil', quantityParser(SOIL_STRENGTH))
    .option(
      '--missing <legs>',
      'numbers of legs that are gone, such as 2 or 1,3; legs count from 1 in the order of the file',
      legNumbersParser,
    )
    .option('--soft <legs>', 'legs that crush too easily', legNumbersParser)
    .option(
      '--soft-factor <ratio>',
      `what is left of their crush forces (default: ${DEFAULT_SOFT_FACTOR})`,
      quantityParser(SOFTNESS),
    )
    .option('--unlatched <legs>', 'legs that were not latched and fold', legNumbersParser);
}

/** Travel runs along +x of the world, so the fall line is turned instead. */
export function readLanding(lander: Lander, options: LandingOptions): Omit<TouchdownConditions, 'state'> {
  const { slope = 0, slopeAzimuth = 0, friction = DEFAULT_FRICTION } = options;
  const soil = readSoil(options);
  const legs = readLegs(lander, options);
  return {
    gravity: readCondition({ ...worldOf(options) }, 'lander').gravity,
    ground: {
      // uphill is a slope that falls the other way
      shape: {
        kind: 'plane',
        slope: toRadians(Math.abs(slope)),
        fallAzimuth: toRadians(slopeAzimuth + (slope < 0 ? 180 : 0)),
      },
      friction,
      ...(soil && { soil }),
    },
    ...(legs.length > 0 && { legs }),
  };
}

/** What was asked, defaults filled in. */
export function echoLanding(options: LandingOptions): Readonly<Record<string, unknown>> {
  const { world, gravity } = echoCondition({ ...worldOf(options) }, 'lander');
  return {
    world,
    gravity,
    slopeDeg: options.slope ?? 0,
    slopeAzimuthDeg: options.slopeAzimuth ?? 0,
    friction: options.friction ?? DEFAULT_FRICTION,
    soilStiffness: options.soilStiffness ?? null,
    soilStrength: options.soilStrength ?? null,
    missing: options.missing ?? [],
    soft: options.soft ?? [],
    softFactor: options.softFactor ?? DEFAULT_SOFT_FACTOR,
    unlatched: options.unlatched ?? [],
  };
}

/** The ground and the state of the legs in words, such as 'slope 5 deg, friction 0.8, leg 2 missing'. */
export function describeLanding(options: LandingOptions): string {
  const {
    slope = 0,
    slopeAzimuth = 0,
    friction = DEFAULT_FRICTION,
    soilStiffness,
    softFactor = DEFAULT_SOFT_FACTOR,
  } = options;
  const azimuth = slopeAzimuth === 0 ? '' : ` toward azimuth ${slopeAzimuth} deg`;
  return [
    slope === 0 ? 'level ground' : `slope ${slope} deg${azimuth}`,
    `friction ${friction}`,
    soilStiffness === undefined ? '' : 'soft soil',
    legsIn(options.missing, 'missing'),
    legsIn(options.soft, `soft (${softFactor} of the crush force)`),
    legsIn(options.unlatched, 'not latched'),
  ]
    .filter((words) => words !== '')
    .join(', ');
}

function legsIn(numbers: readonly number[] | undefined, state: string): string {
  if (numbers === undefined || numbers.length === 0) return '';
  return `leg${numbers.length === 1 ? '' : 's'} ${numbers.join(', ')} ${state}`;
}

/** World or gravity alone, for the parts of the closed forms that know them. */
export function worldOf({
  world,
  gravity,
}: Pick<ConditionOptions, 'world' | 'gravity'>): Pick<ConditionOptions, 'world' | 'gravity'> {
  return { ...(world !== undefined && { world }), ...(gravity !== undefined && { gravity }) };
}

function readSoil({ soilStiffness: stiffness, soilStrength: strength }: LandingOptions): Soil | undefined {
  if (stiffness === undefined && strength === undefined) return undefined;
  if (stiffness === undefined || strength === undefined)
    throw new UsageError('expected --soil-stiffness and --soil-strength together');
  return { kind: 'bearing', stiffness, strength };
}

function readLegs(lander: Lander, options: LandingOptions): readonly LegCondition[] {
  const { missing = [], soft = [], softFactor, unlatched = [] } = options;
  if (softFactor !== undefined && soft.length === 0) throw new UsageError('--soft-factor goes with --soft');
  const named = [...missing, ...soft, ...unlatched];
  const absent = named.find((number) => number > lander.legs.length);
  if (absent !== undefined) throw new UsageError(`${lander.name} has ${lander.legs.length} legs, came leg ${absent}`);
  const twice = named.find((number, index) => named.indexOf(number) !== index);
  if (twice !== undefined) throw new UsageError(`leg ${twice} is given two conditions`);
  if (missing.length >= lander.legs.length)
    throw new UsageError('--missing: expected at least one leg left, came none');
  return [
    ...missing.map((number): LegCondition => ({ leg: number - 1, kind: 'missing' })),
    ...soft.map((number): LegCondition => ({
      leg: number - 1,
      kind: 'soft',
      factor: softFactor ?? DEFAULT_SOFT_FACTOR,
    })),
    ...unlatched.map((number): LegCondition => ({ leg: number - 1, kind: 'not latched' })),
  ];
}
