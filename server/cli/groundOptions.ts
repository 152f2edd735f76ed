import type { Command } from 'commander';
import { CONDITION_FIELDS } from '../../engine/condition/index.ts';
import type { Lander } from '../../engine/lander/index.ts';
import { DEFAULT_FRICTION } from '../../engine/study/index.ts';
import type { Ground } from '../../engine/touchdown/index.ts';
import { toRadians } from '../../engine/math/index.ts';
import { checkLegNumbers } from './gearOptions.ts';
import { addField, DOWNHILL, echoFields, sayField, type FieldOptions } from './fieldOptions.ts';
import { padHeightsParser, type PadHeight } from './quantity.ts';
import { addSiteOptions, echoSite, readSite, type SiteGround, type SiteOptions } from './siteOptions.ts';
import { addSoilOptions, describeSoil, echoSoil, readSoil, type SoilOptions } from './soilOptions.ts';
import { UsageError } from './usageError.ts';

/** The ground of a simulated touchdown, in the units of the command line. */
export interface GroundOptions
  extends SiteOptions, SoilOptions, FieldOptions<'slopeDeg' | 'slopeAzimuthDeg' | 'friction'> {
  readonly underPad?: readonly PadHeight[];
}

export function addGroundOptions(command: Command): Command {
  addField(command.optionsGroup('Ground:'), 'slopeDeg', { note: DOWNHILL });
  addField(command, 'slopeAzimuthDeg');
  addSiteOptions(command);
  addField(command, 'friction', { otherwise: `default: that of the site, else ${DEFAULT_FRICTION}` });
  command.option(
    '--under-pad <leg:m>',
    `flat ${CONDITION_FIELDS.padHeight.meaning} alone, such as 2:0.3 or 1:0.3,4:-0.1`,
    padHeightsParser,
  );
  return addSoilOptions(command);
}

/** The ground, and how far it had to be turned: the section of a site cannot be, so travel and lander are turned instead. */
interface TurnedGround {
  readonly ground: Ground;
  /** Azimuth of travel in the frame of the ground [rad]; it adds to every yaw. */
  readonly travelAzimuth: number;
  readonly site?: SiteGround;
}

export function readGround(lander: Lander, options: GroundOptions): TurnedGround {
  const { slope, slopeAzimuth, underPad = [], siteAzimuth = 0 } = options;
  const site = readSite(options);
  const soil = readSoil(options) ?? site?.terrain.soil;
  checkLegNumbers(
    '--under-pad',
    lander,
    underPad.map(({ leg }) => leg),
  );
  const rest = {
    friction: options.friction ?? site?.terrain.friction ?? DEFAULT_FRICTION,
    ...(soil && { soil }),
    ...(underPad.length > 0 && { underPad: underPad.map(({ leg, height }) => ({ leg: leg - 1, height })) }),
  };
  if (site !== undefined) {
    if (slope !== undefined || slopeAzimuth !== undefined)
      throw new UsageError('expected --site, or --slope with --slope-azimuth, got both');
    const ground: Ground = { shape: { kind: 'profile', terrain: site.terrain }, ...rest };
    return { ground, travelAzimuth: toRadians(-siteAzimuth), site };
  }
  // travel runs along +x and the fall line is turned; uphill is a slope that falls the other way
  const fallAzimuth = toRadians((slopeAzimuth ?? 0) + ((slope ?? 0) < 0 ? 180 : 0));
  const shape = { kind: 'plane', slope: toRadians(Math.abs(slope ?? 0)), fallAzimuth } as const;
  return { ground: { shape, ...rest }, travelAzimuth: 0 };
}

/** What was asked, defaults filled in; null where it does not enter. */
export function echoGround(options: GroundOptions, { friction, soil }: Ground): Readonly<Record<string, unknown>> {
  const plane = echoFields(options, ['slopeDeg', 'slopeAzimuthDeg']);
  return {
    ...(options.site === undefined ? plane : { slopeDeg: null, slopeAzimuthDeg: null }),
    ...echoSite(options),
    friction,
    underPad: options.underPad ?? [],
    ...echoSoil(soil),
  };
}

/** The ground in words, a piece each: 'slope 5 deg', 'friction 0.8', 'a rock of 0.3 m under leg 2'. */
export function describeGround(options: GroundOptions, { friction, soil }: Ground): readonly string[] {
  const { slope = 0, slopeAzimuth = 0, underPad = [] } = options;
  const azimuth = slopeAzimuth === 0 ? '' : ` toward azimuth ${slopeAzimuth} deg`;
  return [
    options.site === undefined ? (slope === 0 ? 'level ground' : `${sayField('slopeDeg', slope)}${azimuth}`) : '',
    sayField('friction', friction),
    describeSoil(soil),
    ...underPad.map(({ leg, height }) => `a ${height < 0 ? 'hole' : 'rock'} of ${Math.abs(height)} m under leg ${leg}`),
  ].filter((words) => words !== '');
}
