import { Command, CommanderError } from 'commander';
import manifest from '../../package.json' with { type: 'json' };
import { CAUTION } from '../../engine/constants.ts';
import { formatReport, type Report, type ReportFormat } from './report.ts';
import { oneLine, UsageError } from './usageError.ts';

/** Adds a verb's arguments, options and examples to a command, and hands over what the verb found. */
export type DefineVerb = (command: Command, deliver: (report: Report) => void) => void;

interface Verb {
  readonly name: string;
  readonly summary: string;
  /** Brings in the verb's file and, with it, the parts of the engine it needs and no others: start-up stays short. */
  readonly load: () => Promise<DefineVerb>;
}

const VERBS: readonly Verb[] = [
  {
    name: 'stand',
    summary: 'static tilt at which a lander falls, by azimuth and least',
    load: async () => (await import('./stand.ts')).defineStand,
  },
  {
    name: 'limit',
    summary: 'horizontal speed at which a lander trips, by azimuth and least',
    load: async () => (await import('./limit.ts')).defineLimit,
  },
  {
    name: 'stance',
    summary: 'stance required for a speed on each of several worlds',
    load: async () => (await import('./stance.ts')).defineStance,
  },
  {
    name: 'touchdown',
    summary: 'one touchdown simulated in six degrees of freedom',
    load: async () => (await import('./touchdown.ts')).defineTouchdown,
  },
  {
    name: 'envelope',
    summary: 'speeds that a lander survives, and what ends it elsewhere',
    load: async () => (await import('./envelope.ts')).defineEnvelope,
  },
  {
    name: 'disperse',
    summary: 'how likely a lander is to stay upright, with intervals',
    load: async () => (await import('./disperse.ts')).defineDisperse,
  },
  {
    name: 'compare',
    summary: 'a lander upright and lying on its side',
    load: async () => (await import('./compare.ts')).defineCompare,
  },
  {
    name: 'trade',
    summary: 'tip limit and mass as dimensions of a lander change',
    load: async () => (await import('./trade.ts')).defineTrade,
  },
  {
    name: 'report',
    summary: 'everything about one lander and arrival, as a page for a board',
    load: async () => (await import('./boardReport.ts')).defineReport,
  },
  {
    name: 'descend',
    summary: 'a whole descent, flown by the stand-ins without a screen',
    load: async () => (await import('./descend.ts')).defineDescend,
  },
  {
    name: 'drill',
    summary: 'the drills that there are, and what is wrong with a drill file',
    load: async () => (await import('./drill.ts')).defineDrill,
  },
  {
    name: 'hall',
    summary: 'the scenes for a hall, and what is wrong with a file of them',
    load: async () => (await import('./hall.ts')).defineHall,
  },
  {
    name: 'replay',
    summary: 'the record of a table played again, and where it differs',
    load: async () => (await import('./replay.ts')).defineReplay,
  },
  {
    name: 'records',
    summary: 'the records that a server keeps: list, keep, delete, export',
    load: async () => (await import('./records.ts')).defineRecords,
  },
  {
    name: 'worlds',
    summary: 'the worlds and their gravity, with sources',
    load: async () => (await import('./worlds.ts')).defineWorlds,
  },
  {
    name: 'check',
    summary: 'compare the engine with published values; exit code 1 on any failure',
    load: async () => (await import('./check.ts')).defineCheck,
  },
];

const EXAMPLES = `
Examples:
  kilter stand trivet --slope 5
  kilter limit trivet --world moon --slope 5 --descent 2
  kilter stance --half-stance 1.5 --center-height 2 --mass 1000 --inertia 1500
  kilter touchdown trivet --horizontal 1 --descent 2 --slope 5
  kilter envelope trivet --slope 5 --steps 16 --yaws 8
  kilter disperse levels/scenarios/benchArrivals.json
  kilter compare steeple
  kilter trade trivet --vary footRadius,centerHeight
  kilter report trivet --slope 5 --out trivet.html
  kilter descend --lander steeple --site coombe-ledge
  kilter check`;

/** Longest refusal: several problems of a file on one line, characters. */
const LONGEST_REFUSAL = 2600;

const VERB_NAMES = VERBS.map((verb) => verb.name).join(', ');

/** Where the command writes. */
interface Outlet {
  readonly out: (text: string) => void;
  readonly err: (text: string) => void;
}

/**
 * Runs one command line (without `node` and the script). Returns the exit code: 0 done, 1 a check failed, 2 bad input, 130 interrupted. `print`: makes
 * the text of what a verb found.
 */
export async function runCommandLine(
  args: readonly string[],
  outlet: Outlet,
  print: (report: Report, format: ReportFormat) => Promise<string> = formatReport,
): Promise<number> {
  let exitCode = 0;
  const delivered: { readonly report: Report; readonly format: ReportFormat }[] = [];
  try {
    const program = await createProgram(args, outlet, (report, format) => {
      delivered.push({ report, format });
      if (report.failed === true) exitCode = 1;
      if (report.isPartial === true) exitCode = 130;
    });
    await program.parseAsync(args.length === 0 ? ['--help'] : args, { from: 'user' });
    for (const { report, format } of delivered) outlet.out(await print(report, format));
    return exitCode;
  } catch (error) {
    if (error instanceof CommanderError && error.exitCode === 0) return 0;
    if (!(error instanceof CommanderError || error instanceof UsageError)) throw error;
    outlet.err(`kilter: ${oneLine(explain(error), LONGEST_REFUSAL)}\n`);
    return 2;
  }
}

async function createProgram(
  args: readonly string[],
  outlet: Outlet,
  deliver: (report: Report, format: ReportFormat) => void,
): Promise<Command> {
  const program = new Command('kilter')
    .description('Static and dynamic stability of legged landers on sloped ground.')
    .version(manifest.version)
    .exitOverride()
    .configureOutput({ writeOut: outlet.out, writeErr: () => {} })
    .addHelpText('after', `${EXAMPLES}\n\nEach verb explains itself: kilter limit --help\n\n${CAUTION}`);
  for (const verb of VERBS) {
    const command = program.command(verb.name).summary(verb.summary);
    if (!args.includes(verb.name)) continue;
    const define = await verb.load();
    define(command, (report) => {
      deliver(report, formatOf(command.opts()));
    });
    command
      .optionsGroup('Output:')
      .option('--json', 'print JSON for machines')
      .helpOption('-h, --help', 'print this page')
      // refused before the work is done, not after it
      .hook('preAction', () => void formatOf(command.opts()))
      .addHelpText('after', `\n${CAUTION}`);
  }
  return program;
}

function formatOf({ json, csv }: { readonly json?: boolean; readonly csv?: boolean }): ReportFormat {
  if (json === true && csv === true) throw new UsageError('expected --json or --csv, got both');
  if (json === true) return 'json';
  return csv === true ? 'csv' : 'text';
}

function explain(error: CommanderError | UsageError): string {
  const message = error.message.replace(/^error: /, '').replace(/\.\s*$/, '');
  if (!(error instanceof CommanderError)) return message;
  if (error.code === 'commander.help') return `unknown command; expected one of ${VERB_NAMES}`;
  return error.code === 'commander.unknownCommand' ? `${message}; expected one of ${VERB_NAMES}` : message;
}
