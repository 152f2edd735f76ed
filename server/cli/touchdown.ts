import { simulateTouchdown } from '../../engine/touchdown/index.ts';
import { tableOf } from '../../engine/csv.ts';
import { addLandingOptions, rangedLanding, readLanding, type LandingOptions } from './landingOptions.ts';
import { withMass } from './massAtContact.ts';
import { accepted } from './problems.ts';
import type { DefineVerb } from './program.ts';
import { textParser, yawsParser } from './quantity.ts';
import { readLander } from './readLander.ts';
import type { Report } from './report.ts';
import { addStateOptions, echoState, readState, type StateOptions } from './stateOptions.ts';
import { HISTORY_EVERY, writeHistory } from './touchdownHistory.ts';
import { touchdownResults } from './touchdownResults.ts';
import { touchdownText } from './touchdownText.ts';
import { missingIndices } from './subject.ts';
import { UsageError } from './usageError.ts';
import { criticalYaws, missedYaws, warnOfMissed } from './criticalYaws.ts';
import { countOutcomes, sweepText, touchdownRow, worstRow, yawsAllRound } from './yawSweep.ts';

interface TouchdownCommand extends LandingOptions, StateOptions {
  readonly yaws?: number | 'all';
  readonly history?: string;
}

export const defineTouchdown: DefineVerb = (command, deliver) => {
  addStateOptions(
    command.argument('<lander>', 'built-in lander (trivet, steeple, bolster) or the path of a lander file'),
  );
  addLandingOptions(command)
    .optionsGroup('Output:')
    .option(
      '--yaws <number>',
      'in place of one yaw: so many all round, or all: every edge, every foot and half way between; a row each, and the worst',
      yawsParser,
    )
    .option('--csv', 'print a row for each touchdown as CSV')
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
direction of travel. Azimuths count from there, + to the left. Least margin: plumb line of the center of mass inside the
footprint, least over the run. A site is a section, the same at every place across it.

Examples:
  kilter touchdown trivet --horizontal 1 --descent 2 --slope 5
  kilter touchdown steeple --horizontal 2.5 --descent 1 --yaw 30 --json
  kilter touchdown steeple --horizontal 1.5 --descent 1.5 --slope 8 --yaws all
  kilter touchdown bolster --descent 2.5 --missing 2 --world mars
  kilter touchdown trivet --horizontal 0.5 --site ravel-bank --site-x 30 --under-pad 2:0.2
  kilter touchdown trivet --descent 2 --soil-stiffness 1e6 --soil-cohesive 1400 --soil-frictional 820000
  kilter touchdown steeple --descent 1 --thrust 20000 --cutoff-delay 0.5 --tail-off 0.3 --hold 2`,
    )
    .action((word: string, options: TouchdownCommand) => {
      deliver(reportTouchdown(word, options));
    });
};

function reportTouchdown(word: string, options: TouchdownCommand): Report {
  if (options.yaws !== undefined) return reportYaws(word, options, options.yaws);
  const lander = withMass(readLander(word), options.mass);
  const landing = readLanding(lander, options);
  const { conditions, travelAzimuth } = landing;
  const touchdown = { lander, ...conditions, state: readState(options, travelAzimuth) };
  const wanted = options.history === undefined ? {} : { historyEvery: HISTORY_EVERY };
  const result = accepted(lander.name, simulateTouchdown(touchdown, wanted));
  const inputs = { lander: word, ...landing.inputs, ...echoState(options), yaws: null };
  if (options.history !== undefined) writeHistory(options.history, result.history ?? [], inputs);
  return {
    verb: 'touchdown',
    inputs,
    ranged: { 'touchdown simulation': rangedLanding(lander, options, landing) },
    results: { ...touchdownResults(result, travelAzimuth), siteSlopeDeg: landing.siteSlopeDeg ?? null },
    text: touchdownText(lander, options, landing, result),
    csv: tableOf([touchdownRow(options.yaw ?? 0, result)]),
  };
}

/** The same touchdown at yaws all round. */
function reportYaws(word: string, options: TouchdownCommand, count: number | 'all'): Report {
  if (options.yaw !== undefined || options.history !== undefined)
    throw new UsageError('expected --yaws, or --yaw or --history, got both');
  const lander = withMass(readLander(word), options.mass);
  const landing = readLanding(lander, options);
  const missing = missingIndices(options.missing ?? []);
  const yaws = count === 'all' ? criticalYaws(lander, missing) : yawsAllRound(count);
  const missed = missedYaws(lander, missing, yaws);
  const rows = yaws.map((yaw) => {
    const state = readState({ ...options, yaw }, landing.travelAzimuth);
    return touchdownRow(yaw, accepted(lander.name, simulateTouchdown({ lander, ...landing.conditions, state })));
  });
  return {
    verb: 'touchdown',
    inputs: { lander: word, ...landing.inputs, ...echoState(options), yawDeg: null, yaws: count },
    ranged: { 'touchdown simulation': rangedLanding(lander, options, landing) },
    results: {
      outcomes: countOutcomes(rows),
      worst: worstRow(rows) ?? null,
      byYaw: rows,
      missedYaws: missed,
      siteSlopeDeg: landing.siteSlopeDeg ?? null,
    },
    text: [sweepText(lander, options, landing, rows), ...warnOfMissed(missed)].join('\n\n'),
    csv: tableOf(rows),
    csvHead: warnOfMissed(missed),
  };
}
