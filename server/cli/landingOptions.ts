import type { Command } from 'commander';
import { landerShape } from '../../engine/checks/index.ts';
import type { Lander } from '../../engine/lander/index.ts';
import type { LoadLimits, TouchdownConditions } from '../../engine/touchdown/index.ts';
import { echoCondition, readCondition } from './condition.ts';
import { addField, echoFields, type FieldOptions } from './fieldOptions.ts';
import { addGearOptions, describeGear, echoGear, readGear, type GearOptions } from './gearOptions.ts';
import { addGroundOptions, describeGround, echoGround, readGround, type GroundOptions } from './groundOptions.ts';
import { describeSite, slopeUnder } from './siteOptions.ts';
import { missingIndices } from './subject.ts';
import { addThrustOptions, describeThrust, echoThrust, readThrust, type ThrustOptions } from './thrustOptions.ts';
import { addWorldOptions, worldOf, type WorldOptions } from './worldOptions.ts';

/** World, ground, gear and engine of a simulated touchdown, in the units of the command line. */
export interface LandingOptions
  extends WorldOptions, GroundOptions, GearOptions, ThrustOptions, FieldOptions<'maxLegLoad' | 'maxAcceleration'> {}

export function addLandingOptions(command: Command): Command {
  addThrustOptions(addGearOptions(addGroundOptions(addWorldOptions(command))));
  command.optionsGroup('Limits (without them only a used-up leg is an overload):');
  return addField(addField(command, 'maxLegLoad'), 'maxAcceleration');
}

/** A touchdown but for the state of the lander at contact. */
export interface Landing {
  readonly conditions: Omit<TouchdownConditions, 'state'>;
  /** Direction of travel in the frame of the ground [rad]; it adds to every yaw. */
  readonly travelAzimuth: number;
  /** What was asked, defaults filled in. */
  readonly inputs: Readonly<Record<string, unknown>>;
  /** Mean slope under the stance, + falling the way the section of the site runs [deg]; undefined on a plane. */
  readonly siteSlopeDeg: number | undefined;
  /** Ground, gear and engine in words, such as 'slope 5 deg, friction 0.8, leg 2 missing'. */
  readonly words: string;
}

export function readLanding(lander: Lander, options: LandingOptions): Landing {
  const { maxLegLoad, maxAcceleration } = options;
  const { ground, travelAzimuth, site } = readGround(lander, options);
  const legs = readGear(lander, options);
  const loadLimits: LoadLimits = {
    ...(maxLegLoad !== undefined && { legLoad: maxLegLoad }),
    ...(maxAcceleration !== undefined && { acceleration: maxAcceleration }),
  };
  const siteSlopeDeg = site && slopeUnder(site, lander);
  const { world, gravity } = echoCondition({ ...worldOf(options) }, 'lander');
  return {
    conditions: {
      gravity: readCondition({ ...worldOf(options) }, 'lander').gravity,
      ground,
      ...(legs.length > 0 && { legs }),
      ...readThrust(lander, options),
      ...(Object.keys(loadLimits).length > 0 && { loadLimits }),
    },
    travelAzimuth,
    siteSlopeDeg,
    inputs: {
      world,
      gravity,
      ...echoGround(options, ground),
      ...echoGear(options),
      ...echoThrust(lander, options),
      ...echoFields(options, ['maxLegLoad', 'maxAcceleration']),
    },
    words: [
      ...(site === undefined || siteSlopeDeg === undefined ? [] : [describeSite(site, options, siteSlopeDeg)]),
      ...describeGround(options, ground),
      ...describeGear(options),
      ...describeThrust(options),
    ].join(', '),
  };
}

/** What the checked range looks at besides the inputs: the shape of the lander, and the slope that it meets on a site. */
export function rangedLanding(
  lander: Lander,
  { missing = [] }: LandingOptions,
  { siteSlopeDeg }: Landing,
): Readonly<Record<string, unknown>> {
  return {
    ...landerShape(lander, missingIndices(missing)),
    ...(siteSlopeDeg !== undefined && { slopeDeg: siteSlopeDeg }),
  };
}
