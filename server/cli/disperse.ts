import type { Command } from 'commander';
import {
  campaignStackUp,
  planVariance,
  simulatedStackUp,
  SAMPLING_METHODS,
  type Campaign,
  type SamplingMethod,
} from '../../engine/dispersion/index.ts';
import { runCampaign, runVariance } from '../workers/runCampaign.ts';
import { reportCase } from './campaignCase.ts';
import { reportCampaign } from './campaignReport.ts';
import { campaignDocument, readCampaign, type CampaignDocument } from './campaignFile.ts';
import type { CampaignStacks } from './campaignStacks.ts';
import { readCondition } from './condition.ts';
import { addWorldOptions, worldOf } from './worldOptions.ts';
import { addLongOptions, withProgress, type LongOptions } from './longWork.ts';
import type { DefineVerb } from './program.ts';
import { choiceParser, quantityParser, SEED, textParser, type Quantity } from './quantity.ts';
import { UsageError } from './usageError.ts';

interface DisperseOptions extends LongOptions {
  readonly runs?: number;
  readonly seed?: number;
  readonly method?: SamplingMethod;
  readonly fraction?: number;
  readonly confidence?: number;
  readonly shares?: number;
  readonly stackUp?: boolean;
  readonly world?: string;
  readonly gravity?: number;
  readonly csv?: boolean;
  readonly case?: number;
  readonly history?: string;
}

const RUNS: Quantity = { unit: 'runs', least: 1, most: 2_000_000, whole: true };
const INDEX: Quantity = { unit: '', least: 0, most: RUNS.most - 1, whole: true };
const SHARE: Quantity = { unit: '', least: 1e-6, most: 1 - 1e-9 };
const POINTS: Quantity = { unit: 'points', least: 2, most: 65_536, whole: true };

export const defineDisperse: DefineVerb = (command, deliver) => {
  addCampaignOptions(
    command.argument(
      '<lander or campaign>',
      'built-in lander (trivet, steeple, bolster), a lander file, or a campaign file',
    ),
  );
  addLongOptions(addWorldOptions(command, 'moon for a lander'))
    .optionsGroup('Output:')
    .option('--csv', 'print every case as CSV')
    .option(
      '--case <index>',
      'run the case of this index alone, such as one of the worst; needs the same campaign, runs, seed and method',
      quantityParser(INDEX),
    )
    .option(
      '--history <file>',
      'with --case: write its time history to a new file, CSV, or JSON when its name ends in .json',
      textParser,
    )
    .description(
      'Dispersions: many touchdowns drawn from stated distributions and simulated. Share of each outcome with intervals, a ' +
        'verdict on a requirement, order statistics, what drives the margin, and the worst cases by index.',
    )
    .addHelpText(
      'after',
      `
For a lander the distributions are standard ones, invented for exercise; --json shows them in inputs.campaign, in the form of a
campaign file. Options given here replace what the file says. The result depends on runs, seed and method, not on the number of
workers. Intervals take the runs as independent draws, which plain ones are. Ctrl-C prints what was done so far.

Examples:
  kilter disperse trivet --runs 200 --seed 5
  kilter disperse trivet --runs 200 --seed 5 --case 57
  kilter disperse levels/scenarios/benchArrivals.json --runs 200
  kilter disperse bolster --runs 128 --method sobol --json`,
    )
    .action(async (word: string, options: DisperseOptions) => {
      const document = withOptions(campaignDocument(word), options);
      const campaign = readCampaign(document, word);
      const { case: index, history } = options;
      if (index !== undefined) {
        if (options.csv === true || options.shares !== undefined)
          throw new UsageError('expected --case, or --csv or --shares, got both');
        deliver(reportCase(word, document, campaign, { case: index, ...(history !== undefined && { history }) }));
        return;
      }
      if (history !== undefined) throw new UsageError('--history goes with --case');
      const plan = options.shares === undefined ? undefined : planOf(campaign, options.shares);
      const tally = await withProgress(options, 'touchdowns', (work) => runCampaign(campaign, work));
      // interrupted already: the shares would start anew
      const isDone = tally.done === campaign.runs;
      const shares =
        isDone && plan ? await withProgress(options, 'touchdowns', (work) => runVariance(plan, work)) : undefined;
      const stack = isDone && options.stackUp === true ? stackOf(campaign) : undefined;
      deliver(reportCampaign(word, document, tally, { asked: plan !== undefined, shares, stack }));
    });
};

function addCampaignOptions(command: Command): Command {
  return command
    .optionsGroup('Campaign:')
    .option('--runs <number>', 'touchdowns (default: 1000 for a lander)', quantityParser(RUNS))
    .option('--seed <number>', 'whole number that fixes what is drawn (default: 1 for a lander)', quantityParser(SEED))
    .option(
      '--method <name>',
      `${SAMPLING_METHODS.join(', ')} (default: plain for a lander)`,
      choiceParser(SAMPLING_METHODS),
    )
    .option(
      '--fraction <share>',
      'require success in at least this share of all cases, such as 0.99',
      quantityParser(SHARE),
    )
    .option('--confidence <share>', 'with this confidence, such as 0.95', quantityParser(SHARE))
    .option(
      '--shares <points>',
      'also shares of variance, by a design of so many base points, a power of 2',
      quantityParser(POINTS),
    )
    .option(
      '--stack-up',
      'also stack the dispersions up against the simulated tip limit, all round the lander; takes seconds to a minute',
    );
}

/** The document with the options of the command line in it. */
function withOptions(document: CampaignDocument, options: DisperseOptions): CampaignDocument {
  const { runs, seed, method, fraction, confidence } = options;
  const changed: Record<string, unknown> = { ...document };
  if (runs !== undefined) changed['runs'] = runs;
  if (seed !== undefined) changed['seed'] = seed;
  if (method !== undefined) changed['method'] = method;
  if (options.world !== undefined || options.gravity !== undefined) {
    // also checks that only one of the two was given
    const { gravity } = readCondition(worldOf(options), 'lander');
    delete changed['world'];
    delete changed['gravity'];
    if (options.world === undefined) changed['gravity'] = gravity;
    else changed['world'] = options.world.toLowerCase();
  }
  if (fraction !== undefined || confidence !== undefined) {
    const before: unknown = document['requirement'];
    changed['requirement'] = {
      ...(typeof before === 'object' ? before : { fraction: 0.99, confidence: 0.95 }),
      ...(fraction !== undefined && { fraction }),
      ...(confidence !== undefined && { confidence }),
    };
  }
  return changed;
}

function planOf(campaign: Campaign, points: number): ReturnType<typeof planVariance> {
  if ((points & (points - 1)) !== 0) throw new UsageError(`--shares: expected a power of 2, got ${points}`);
  try {
    return planVariance(campaign, points);
  } catch (error) {
    throw new UsageError(
      `--shares: ${error instanceof Error ? error.message.replace('Broken contract: ', '') : String(error)}`,
    );
  }
}

function stackOf(campaign: Campaign): CampaignStacks {
  return { simulated: simulatedStackUp(campaign), feetTogether: campaignStackUp(campaign) };
}
