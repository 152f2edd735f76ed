import type { Command } from 'commander';
import {
  formatProblem,
  landerShape,
  simulateTouchdown,
  type Lander,
  type TouchdownCase,
  type TouchdownResult,
} from '../../engine/index.ts';
import { toAzimuthDeg, toRadians } from './angles.ts';
import { namePlace } from './condition.ts';
import {
  addLandingOptions,
  describeLanding,
  echoLanding,
  readLanding,
  worldOf,
  type LandingOptions,
} from './landingOptions.ts';
import type { DefineVerb } from './program.ts';
import { BODY_RATE, DESCENT_RATE, quantityParser, textParser, type Quantity } from './quantity.ts';
import { readLander } from './readLander.ts';
import type { Report } from './report.ts';
import { missingIndices } from './subject.ts';
import { figure, textTable } from './textTable.ts';
import { writeHistory } from './touchdownHistory.ts';
import { UsageError } from './usageError.ts';

interface TouchdownOptions extends LandingOptions {
  readonly horizontal?: number;
  readonly descent?: number;
  readonly yaw?: number;
  readonly pitch?: number;
  readonly roll?: number;
  readonly rate?: number;
  readonly height?: number;
  readonly history?: string;
}

const HORIZONTAL: Quantity = { unit: 'm/s', least: -100, most: 100 };
const TURN: Quantity = { unit: 'deg', least: -360, most: 360 };
const LEAN: Quantity = { unit: 'deg', least: -80, most: 80 };
const FALL: Quantity = { unit: 'm', least: 0, most: 100 };

/** Steps between the samples of a history. */
const HISTORY_EVERY = 16;

export const defineTouchdown: DefineVerb = (command, deliver) => {
  addState(
    addLandingOptions(
      command.argument('<lander>', 'built-in lander (trivet, steeple, bolster) or the path of a lander file'),
    ),
  )
    .option(
      '--history <file>',
      'write the time history to a new file: CSV, or JSON when its name ends in .json',
      textParser,
    )
    .description(
      'One touchdown, simulated in six degrees of freedom from first contact to rest: legs that crush, feet that stick and ' +
        'slide, a hull that may strike. Says how it ended and by what margin.',
    )
    .addHelpText(
      'after',
      `
The lander travels along azimuth 0; yaw turns it, and pitch and roll lean it about its own axes. A rate turns it toward the
direction of travel. Least margin: plumb line of the center of mass inside the footprint, least over the run.

Examples:
  kilter touchdown trivet --horizontal 1 --descent 2 --slope 5
  kilter touchdown steeple --horizontal 2.5 --descent 1 --yaw 30 --json
  kilter touchdown bolster --descent 2.5 --missing 2 --world mars`,
    )
    .action((word: string, options: TouchdownOptions) => {
      deliver(reportTouchdown(word, options));
    });
};

function addState(command: Command): Command {
  return command
    .option('--horizontal <m/s>', 'horizontal speed at contact (default: 0)', quantityParser(HORIZONTAL))
    .option('--descent <m/s>', 'descent rate at contact (default: 1)', quantityParser(DESCENT_RATE))
    .option('--yaw <deg>', 'turn of the lander about the vertical (default: 0)', quantityParser(TURN))
    .option('--pitch <deg>', 'lean toward its own +x (default: 0)', quantityParser(LEAN))
    .option('--roll <deg>', 'lean toward its own -y (default: 0)', quantityParser(LEAN))
    .option('--rate <deg/s>', 'body rate toward the direction of travel (default: 0)', quantityParser(BODY_RATE))
    .option('--height <m>', 'free fall before the lowest footpad touches (default: 0)', quantityParser(FALL));
}

function reportTouchdown(word: string, options: TouchdownOptions): Report {
  const lander = readLander(word);
  const touchdown = caseOf(lander, options);
  const wanted = options.history === undefined ? {} : { historyEvery: HISTORY_EVERY };
  const simulated = simulateTouchdown(touchdown, wanted);
  if (!simulated.ok) throw new UsageError(simulated.error.map(formatProblem).join('; '));
  const result = simulated.value;
  if (options.history !== undefined) writeHistory(options.history, result.history ?? []);
  const { state } = touchdown;
  const inputs = {
    lander: word,
    ...echoLanding(options),
    horizontalSpeed: state.horizontalSpeed,
    descentRate: state.descentRate,
    yawDeg: options.yaw ?? 0,
    pitchDeg: options.pitch ?? 0,
    rollDeg: options.roll ?? 0,
    rateDegPerSecond: options.rate ?? 0,
    height: options.height ?? 0,
  };
  const ranged = { ...landerShape(lander, missingIndices(options.missing ?? [])) };
  return {
    verb: 'touchdown',
    inputs,
    ranged,
    results: resultsOf(result),
    text: textOf(lander, options, touchdown, result),
  };
}

function caseOf(lander: Lander, options: TouchdownOptions): TouchdownCase {
  const { horizontal = 0, descent = 1, yaw = 0, pitch = 0, roll = 0, rate = 0, height = 0 } = options;
  const turn = toRadians(yaw);
  const toward = toRadians(rate);
  return {
    lander,
    ...readLanding(lander, options),
    state: {
      horizontalSpeed: horizontal,
      descentRate: descent,
      travelAzimuth: 0,
      yaw: turn,
      pitch: toRadians(pitch),
      roll: toRadians(roll),
      // about the world's y axis, seen in the axes of the turned lander
      rates: [toward * Math.sin(turn), toward * Math.cos(turn), 0],
      height,
    },
  };
}

function resultsOf(result: TouchdownResult): Report['results'] {
  const { leastMargin, clearance, tiltAzimuth, outcome, limitsHit, strokes, strokesUsed, peakLoads, sinkages } = result;
  const { peakAcceleration, slide, restTiltDeg, time, firstContact, steps, step } = result;
  return {
    outcome,
    limitsHit,
    leastMargin: leastMargin.value,
    leastMarginTime: leastMargin.time,
    strokes,
    strokesUsed,
    peakLoads,
    sinkages,
    peakAcceleration,
    // there are landers without hull points
    clearance: Number.isFinite(clearance) ? clearance : null,
    slide,
    restTiltDeg,
    tiltAzimuthDeg: toAzimuthDeg(tiltAzimuth),
    time,
    firstContact,
    steps,
    step,
  };
}

/** What turns and leans the lander at contact, where anything does. */
function describeAttitude({ yaw = 0, pitch = 0, roll = 0, rate = 0, height = 0 }: TouchdownOptions): string {
  const parts = { yaw, pitch, roll };
  const words = Object.entries(parts).flatMap(([name, value]) => (value === 0 ? [] : [`${name} ${value} deg`]));
  if (rate !== 0) words.push(`turning at ${rate} deg/s`);
  if (height !== 0) words.push(`after a fall of ${height} m`);
  return words.length === 0 ? '' : `; ${words.join(', ')}`;
}

function textOf(lander: Lander, options: TouchdownOptions, touchdown: TouchdownCase, result: TouchdownResult): string {
  const { state } = touchdown;
  const where = `${lander.name} ${namePlace(worldOf(options))}`;
  const limits = result.limitsHit.length === 0 ? 'no limit hit' : `hit: ${result.limitsHit.join(', ')}`;
  const legs = lander.legs.map((_, index) => [
    String(index + 1),
    figure(result.strokes[index], 3),
    figure((result.strokesUsed[index] ?? 0) * 100, 0),
    figure((result.peakLoads[index] ?? 0) / 1000, 2),
    figure((result.sinkages[index] ?? 0) * 1000, 1),
  ]);
  return [
    `${where}, ${state.horizontalSpeed} m/s across and ${state.descentRate} m/s down: ${result.outcome} (${limits}).`,
    `On ${describeLanding(options)}${describeAttitude(options)}.`,
    `Least margin ${figure(result.leastMargin.value, 3)} m at ${figure(result.leastMargin.time, 2)} s; ` +
      `slid ${figure(result.slide, 2)} m; leans ${figure(result.restTiltDeg, 1)} deg at the end, ${figure(result.time, 1)} s.`,
    `Peak acceleration ${figure(result.peakAcceleration, 1)} m/s^2; hull no nearer to the ground than ` +
      `${Number.isFinite(result.clearance) ? `${figure(result.clearance, 3)} m` : '- (no hull points)'}.`,
    '',
    textTable(
      ['leg', 'stroke [m]', 'used [%]', 'peak load [kN]', 'sunk [mm]'].map((heading) => ({ heading, align: 'right' })),
      legs,
    ),
  ].join('\n');
}
