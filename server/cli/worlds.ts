import { figure } from '../../engine/figures.ts';
import { STANDARD_GRAVITY } from '../../engine/constants.ts';
import { WORLDS } from '../../engine/worlds.ts';
import { tableOf } from '../../engine/csv.ts';
import type { DefineVerb } from './program.ts';
import type { Report } from './report.ts';
import { numberSources, textTable } from './textTable.ts';

export const defineWorlds: DefineVerb = (command, deliver) => {
  command
    .description('The worlds that a lander can be set down on, and the gravity of each, with its source.')
    .optionsGroup('Output:')
    .option('--csv', 'print the table as CSV')
    .addHelpText('after', '\nExamples:\n  kilter worlds\n  kilter worlds --json')
    .action(() => {
      deliver(reportWorlds());
    });
};

function reportWorlds(): Report {
  const sources = numberSources(WORLDS.map((world) => world.source));
  const table = textTable(
    [
      { heading: 'world', align: 'left' },
      { heading: 'gravity [m/s^2]', align: 'right' },
      { heading: 'of Earth [-]', align: 'right' },
      { heading: 'basis', align: 'left' },
      { heading: 'source', align: 'right' },
    ],
    WORLDS.map((world) => [
      world.id,
      figure(world.gravity, 5),
      figure(world.gravity / STANDARD_GRAVITY, 4),
      world.basis,
      sources.numberOf(world.source),
    ]),
  );
  const worlds = WORLDS.map((world) => ({ ...world, ratioToEarth: world.gravity / STANDARD_GRAVITY }));
  return { verb: 'worlds', inputs: {}, results: { worlds }, text: `${table}\n\n${sources.list}`, csv: tableOf(worlds) };
}
