import type { Command } from 'commander';
import type { Lander } from '../../engine/lander/index.ts';
import type { AttitudeHold, ThrustTail } from '../../engine/touchdown/index.ts';
import { quantityParser, type Quantity } from './quantity.ts';
import { UsageError } from './usageError.ts';

/** What engine and thrusters still do at contact. */
export interface ThrustOptions {
  readonly thrust?: number;
  readonly cutoffDelay?: number;
  readonly tailOff?: number;
  readonly hold?: number;
  readonly holdBandwidth?: number;
}

const THRUST: Quantity = { unit: 'N', least: 0, most: 1e9 };
const TIME: Quantity = { unit: 's', least: 0, most: 1000 };
const BANDWIDTH: Quantity = { unit: 'rad/s', least: 0.01, most: 20 };

const DEFAULT_CUTOFF_DELAY = 0;
/** Natural frequency of the hold where nothing is said [rad/s]. No source. */
const DEFAULT_HOLD_BANDWIDTH = 1;

export function addThrustOptions(command: Command): Command {
  return command
    .optionsGroup('Engine and thrusters:')
    .option('--thrust <N>', 'thrust still there at contact, along the long axis (default: 0)', quantityParser(THRUST))
    .option(
      '--cutoff-delay <s>',
      `from first footpad contact to engine cut-off (default: ${DEFAULT_CUTOFF_DELAY})`,
      quantityParser(TIME),
    )
    .option(
      '--tail-off <s>',
      'time in which thrust then falls to 1/e; 0 is at once (default: the lag of its engine)',
      quantityParser(TIME),
    )
    .option('--hold <s>', 'attitude thrusters go on holding it upright for so long after contact', quantityParser(TIME))
    .option(
      '--hold-bandwidth <rad/s>',
      `natural frequency of that hold (default: ${DEFAULT_HOLD_BANDWIDTH})`,
      quantityParser(BANDWIDTH),
    );
}

export function readThrust(
  lander: Lander,
  options: ThrustOptions,
): {
  readonly thrust?: ThrustTail;
  readonly hold?: AttitudeHold;
} {
  const { thrust, cutoffDelay = DEFAULT_CUTOFF_DELAY, tailOff, hold, holdBandwidth } = options;
  if (thrust === undefined && (options.cutoffDelay !== undefined || tailOff !== undefined))
    throw new UsageError('--cutoff-delay and --tail-off go with --thrust');
  if (hold === undefined && holdBandwidth !== undefined) throw new UsageError('--hold-bandwidth goes with --hold');
  const { maxThrust, lag } = lander.engine;
  if (thrust !== undefined && thrust > maxThrust)
    throw new UsageError(`--thrust: expected at most the ${maxThrust} N of ${lander.name}, came ${thrust}`);
  return {
    ...(thrust !== undefined && { thrust: { thrust, cutoffDelay, timeConstant: tailOff ?? lag } }),
    ...(hold !== undefined && { hold: { duration: hold, bandwidth: holdBandwidth ?? DEFAULT_HOLD_BANDWIDTH } }),
  };
}

/** What was asked, defaults filled in; null where it does not enter. */
export function echoThrust(lander: Lander, options: ThrustOptions): Readonly<Record<string, unknown>> {
  const { thrust, hold } = readThrust(lander, options);
  return {
    thrust: thrust?.thrust ?? null,
    cutoffDelay: thrust?.cutoffDelay ?? null,
    tailOff: thrust?.timeConstant ?? null,
    hold: hold?.duration ?? null,
    holdBandwidth: hold?.bandwidth ?? null,
  };
}

/** Engine and thrusters in words, a piece each. */
export function describeThrust({ thrust, cutoffDelay = DEFAULT_CUTOFF_DELAY, hold }: ThrustOptions): readonly string[] {
  return [
    ...(thrust === undefined ? [] : [`${thrust} N of thrust, cut off ${cutoffDelay} s after contact`]),
    ...(hold === undefined ? [] : [`thrusters holding for ${hold} s`]),
  ];
}
