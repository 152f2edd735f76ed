import type { Command } from 'commander';
import type { ConditionName } from '../../engine/condition/index.ts';
import { ASSUMED_DESCENT } from '../../engine/study/index.ts';
import type { ContactState } from '../../engine/touchdown/index.ts';
import { toRadians } from '../../engine/math/index.ts';
import { addField, echoFields, sayField, type FieldOptions } from './fieldOptions.ts';

/** How the lander arrives, in the units of the command line. */
export type StateOptions = FieldOptions<(typeof STATE_FIELDS)[number]>;

/** In the order in which they are echoed. */
const STATE_FIELDS = [
  'horizontalSpeed',
  'descentRate',
  'yawDeg',
  'pitchDeg',
  'rollDeg',
  'rateDegPerSecond',
  'pitchRateDegPerSecond',
  'rollRateDegPerSecond',
  'yawRateDegPerSecond',
  'height',
  'mass',
] as const satisfies readonly ConditionName[];

export function addStateOptions(command: Command): Command {
  command.optionsGroup('State at contact:');
  for (const field of STATE_FIELDS) addField(command, field, PARTICULARS[field]);
  return command;
}

const PARTICULARS: { readonly [Field in (typeof STATE_FIELDS)[number]]?: Parameters<typeof addField>[2] } = {
  descentRate: { otherwise: `default: ${ASSUMED_DESCENT}` },
  pitchRateDegPerSecond: { note: ', beside --rate' },
  rollRateDegPerSecond: { note: ', beside --rate' },
  mass: { otherwise: 'default: filled as its file says' },
};

/** The same for the engine; the direction of travel is an azimuth in the frame of the ground [rad], from which yaw counts. */
export function readState(options: StateOptions, travelAzimuth: number): ContactState {
  const { horizontal = 0, descent = ASSUMED_DESCENT, yaw = 0, pitch = 0, roll = 0, height = 0 } = options;
  return {
    horizontalSpeed: horizontal,
    descentRate: descent,
    travelAzimuth,
    yaw: travelAzimuth + toRadians(yaw),
    pitch: toRadians(pitch),
    roll: toRadians(roll),
    rates: bodyRates(options),
    height,
  };
}

/**
 * Rates about the lander's own axes [rad/s]: those given about them, and the one toward the direction of travel, which is about the level
 * axis to the left of travel. Seen from the lander that axis is turned back by yaw, then pitch, then roll.
 */
function bodyRates(options: StateOptions): readonly [number, number, number] {
  const { yaw = 0, pitch = 0, roll = 0, rate = 0, pitchRate = 0, rollRate = 0, yawRate = 0 } = options;
  const [turn, lean, bank] = [toRadians(yaw), toRadians(pitch), toRadians(roll)];
  const toward = toRadians(rate);
  const [x, y, z] = [Math.cos(lean) * Math.sin(turn), Math.cos(turn), Math.sin(lean) * Math.sin(turn)];
  return [
    toRadians(rollRate) + toward * x,
    toRadians(pitchRate) + toward * (Math.cos(bank) * y + Math.sin(bank) * z),
    toRadians(yawRate) + toward * (Math.cos(bank) * z - Math.sin(bank) * y),
  ];
}

/** What was asked, defaults filled in. */
export function echoState(options: StateOptions): Readonly<Record<string, unknown>> {
  return { ...echoFields(options, STATE_FIELDS), descentRate: options.descent ?? ASSUMED_DESCENT };
}

/** What turns and leans the lander at contact, each with a '; ' before it; '' where nothing does. */
export function describeAttitude(options: StateOptions): string {
  const { yaw, pitch, roll, rate, pitchRate, rollRate, yawRate, height = 0, mass } = options;
  const angles = [
    ['yawDeg', yaw],
    ['pitchDeg', pitch],
    ['rollDeg', roll],
  ] as const;
  const rates = Object.entries({
    'toward travel': rate,
    'in pitch': pitchRate,
    'in roll': rollRate,
    'in yaw': yawRate,
  });
  const words = [
    ...angles.flatMap(([name, value = 0]) => (value === 0 ? [] : [sayField(name, value)])),
    ...rates.flatMap(([name, value = 0]) => (value === 0 ? [] : [`turning at ${value} deg/s ${name}`])),
    ...(height === 0 ? [] : [`after a fall of ${height} m`]),
    ...(mass === undefined ? [] : [`weighing ${mass} kg`]),
  ];
  return words.length === 0 ? '' : `; ${words.join(', ')}`;
}
