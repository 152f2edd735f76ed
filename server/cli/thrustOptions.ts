import type { Command } from 'commander';
import { CONDITION_FIELDS } from '../../engine/condition/index.ts';
import type { Lander } from '../../engine/lander/index.ts';
import type { AttitudeHold, ThrustTail } from '../../engine/touchdown/index.ts';
import { addField, type FieldOptions } from './fieldOptions.ts';
import { UsageError } from './usageError.ts';

/** What engine and thrusters still do at contact. */
export type ThrustOptions = FieldOptions<'thrust' | 'cutoffDelay' | 'tailOff' | 'hold' | 'holdBandwidth'>;

const DEFAULT_CUTOFF_DELAY = CONDITION_FIELDS.cutoffDelay.fallback;
const DEFAULT_HOLD_BANDWIDTH = CONDITION_FIELDS.holdBandwidth.fallback;

export function addThrustOptions(command: Command): Command {
  addField(command.optionsGroup('Engine and thrusters:'), 'thrust', { otherwise: 'default: 0' });
  addField(command, 'cutoffDelay');
  addField(command, 'tailOff', { otherwise: 'default: the lag of its engine' });
  return addField(addField(command, 'hold'), 'holdBandwidth');
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
    throw new UsageError(`--thrust: expected at most the ${maxThrust} N of ${lander.name}, got ${thrust}`);
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
