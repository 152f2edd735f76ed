import type { Command } from 'commander';
import type { ContactState } from '../../engine/touchdown/index.ts';
import { toRadians } from './angles.ts';
import { BODY_RATE, DESCENT_RATE, MASS, quantityParser, type Quantity } from './quantity.ts';

/** How the lander arrives, in the units of the command line. */
export interface StateOptions {
  readonly horizontal?: number;
  readonly descent?: number;
  readonly yaw?: number;
  readonly pitch?: number;
  readonly roll?: number;
  readonly rate?: number;
  readonly pitchRate?: number;
  readonly rollRate?: number;
  readonly yawRate?: number;
  readonly height?: number;
  readonly mass?: number;
}

const HORIZONTAL: Quantity = { unit: 'm/s', least: -100, most: 100 };
const TURN: Quantity = { unit: 'deg', least: -360, most: 360 };
const LEAN: Quantity = { unit: 'deg', least: -80, most: 80 };
const FALL: Quantity = { unit: 'm', least: 0, most: 100 };

export function addStateOptions(command: Command): Command {
  return command
    .optionsGroup('State at contact:')
    .option('--horizontal <m/s>', 'horizontal speed (default: 0)', quantityParser(HORIZONTAL))
    .option('--descent <m/s>', 'descent rate (default: 1)', quantityParser(DESCENT_RATE))
    .option('--yaw <deg>', 'turn of the lander about the vertical (default: 0)', quantityParser(TURN))
    .option('--pitch <deg>', 'lean toward its own +x (default: 0)', quantityParser(LEAN))
    .option('--roll <deg>', 'lean toward its own -y (default: 0)', quantityParser(LEAN))
    .option('--rate <deg/s>', 'body rate toward the direction of travel (default: 0)', quantityParser(BODY_RATE))
    .option('--pitch-rate <deg/s>', 'body rate about its own y, beside --rate (default: 0)', quantityParser(BODY_RATE))
    .option('--roll-rate <deg/s>', 'body rate about its own x, beside --rate (default: 0)', quantityParser(BODY_RATE))
    .option('--yaw-rate <deg/s>', 'body rate about its own z (default: 0)', quantityParser(BODY_RATE))
    .option('--height <m>', 'free fall before the lowest footpad touches (default: 0)', quantityParser(FALL))
    .option(
      '--mass <kg>',
      'mass at contact, its tanks drained evenly (default: filled as its file says)',
      quantityParser(MASS),
    );
}

/** The same for the engine; the direction of travel is an azimuth in the frame of the ground [rad], from which yaw counts. */
export function readState(options: StateOptions, travelAzimuth: number): ContactState {
  const { horizontal = 0, descent = 1, yaw = 0, pitch = 0, roll = 0, height = 0 } = options;
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
  return {
    horizontalSpeed: options.horizontal ?? 0,
    descentRate: options.descent ?? 1,
    yawDeg: options.yaw ?? 0,
    pitchDeg: options.pitch ?? 0,
    rollDeg: options.roll ?? 0,
    rateDegPerSecond: options.rate ?? 0,
    pitchRateDegPerSecond: options.pitchRate ?? 0,
    rollRateDegPerSecond: options.rollRate ?? 0,
    yawRateDegPerSecond: options.yawRate ?? 0,
    height: options.height ?? 0,
    mass: options.mass ?? null,
  };
}

/** What turns and leans the lander at contact, each with a '; ' before it; '' where nothing does. */
export function describeAttitude(options: StateOptions): string {
  const { yaw, pitch, roll, rate, pitchRate, rollRate, yawRate, height = 0, mass } = options;
  const angles = Object.entries({ yaw, pitch, roll }).map(([name, value]) => [name, value, 'deg'] as const);
  const rates = Object.entries({
    'toward travel': rate,
    'in pitch': pitchRate,
    'in roll': rollRate,
    'in yaw': yawRate,
  });
  const words = [
    ...angles.flatMap(([name, value = 0, unit]) => (value === 0 ? [] : [`${name} ${value} ${unit}`])),
    ...rates.flatMap(([name, value = 0]) => (value === 0 ? [] : [`turning at ${value} deg/s ${name}`])),
    ...(height === 0 ? [] : [`after a fall of ${height} m`]),
    ...(mass === undefined ? [] : [`weighing ${mass} kg`]),
  ];
  return words.length === 0 ? '' : `; ${words.join(', ')}`;
}
