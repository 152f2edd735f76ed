import type { Command } from 'commander';
import { answerLines } from '../board/answerPart.ts';
import { findBoard, type BoardFindings, type Watch } from '../board/boardFindings.ts';
import { boardPage } from '../board/boardPage.ts';
import type { BoardInput, BoardQuestion } from '../board/boardQuestion.ts';
import { readBoard, type BoardOptions } from './boardOptions.ts';
import { sensitivityRows } from '../../engine/study/index.ts';
import { addLongOptions, withProgress, type LongOptions } from './longWork.ts';
import type { DefineVerb } from './program.ts';
import { numbersParser, quantityParser, SEED, textParser, YAWS, type Quantity } from './quantity.ts';
import { WORLD_IDS } from './readWorld.ts';
import type { Report } from './report.ts';
import { fieldsParser, sensitivitiesParser } from './tradeOptions.ts';
import { sha256Of } from './sha256.ts';
import { addStudyOptions, echoStudy, rangedStudy } from './studyOptions.ts';
import { oneLine, UsageError } from './usageError.ts';
import { writeFile } from './writeFile.ts';

interface ReportOptions extends BoardOptions, LongOptions {
  readonly out: string;
}

const RUNS: Quantity = { unit: 'runs', least: 1, most: 100_000, whole: true };
const STEPS: Quantity = { unit: 'steps', least: 2, most: 200, whole: true };
const SLOPE: Quantity = { unit: 'deg', least: 0, most: 45 };

export const defineReport: DefineVerb = (command, deliver) => {
  addStudyOptions(
    command.argument('<lander>', 'built-in lander (trivet, steeple, bolster) or the path of a lander file'),
  );
  addLongOptions(addContentOptions(command))
    .optionsGroup('Output:')
    .requiredOption('--out <file>', 'where the report is written, one file of HTML', textParser)
    .description(
      'Report for a board: everything about one lander and arrival on one page that prints on A4 and Letter and fetches nothing. ' +
        'Limits by world and slope, plots, dispersions with a verdict, worst cases with their commands, assumptions, checked range, ' +
        'credibility card, and the SHA-256 of every input. The same inputs give the same bytes.',
    )
    .addHelpText(
      'after',
      `
About a minute of one core for Trivet, a minute more with --trade; tall landers take several times as long. Ctrl-C ends it
without a report.

Examples:
  kilter report trivet --out trivet.html
  kilter report steeple --world mars --slope 5 --descent 1.5 --horizontal 0.4 --trade --out steeple.html`,
    )
    .action(async (word: string, options: ReportOptions) => {
      const question = readBoard(word, options);
      const watch: Watch = (unit, run) => withProgress(options, unit, run);
      const findings = await findBoard(question, watch);
      if (typeof findings === 'string') throw new UsageError(`${oneLine(word, 80)}: ${question.name} ${findings}`);
      deliver(reportOf(options, question, findings));
    });
};

function addContentOptions(command: Command): Command {
  return command
    .optionsGroup('What it holds:')
    .option('--worlds <names>', `worlds of the matrix: several of ${WORLD_IDS} (default: moon,mars,earth)`, textParser)
    .option('--slopes <deg,...>', 'slopes of the matrix (default: 0,5,8,12)', numbersParser(SLOPE))
    .option('--steps <number>', 'steps along each side of the plane of speeds (default: 24)', quantityParser(STEPS))
    .option('--yaws <number>', 'the plane is the worst of so many yaws (default: 8)', quantityParser(YAWS))
    .option(
      '--campaign <file>',
      'the arrivals to draw, with their requirement: a campaign file of this lander (default: standard ones, invented for exercise)',
      textParser,
    )
    .option('--runs <number>', 'arrivals to draw, in place of what the campaign says', quantityParser(RUNS))
    .option('--seed <number>', 'what is drawn, in place of what the campaign says', quantityParser(SEED))
    .option(
      '--sensitivities <inputs>',
      'inputs to change a little, such as descentRate,mass; none leaves them out (default: all)',
      sensitivitiesParser,
    )
    .option(
      '--trade [fields]',
      'also what dimensions of the lander would buy, such as footRadius,mass as in kilter trade (default: all)',
      fieldsParser,
    );
}

function reportOf(options: ReportOptions, question: BoardQuestion, findings: BoardFindings | undefined): Report {
  const { asked, word, worlds, slopesDeg, grid, campaign, sensitivities, trade } = question;
  const inputs = {
    lander: word,
    ...echoStudy(options, asked),
    worlds: worlds.map(({ id }) => id),
    slopesDeg,
    steps: grid.steps,
    yaws: grid.yaws,
    campaign: options.campaign ?? null,
    runs: campaign.runs,
    seed: campaign.seed,
    sensitivities,
    trade,
  };
  if (findings === undefined) {
    const text = 'PARTIAL: stopped before all was worked out. No report was written.';
    return { verb: 'report', inputs, results: { isPartial: true }, text, isPartial: true };
  }
  const page = boardPage(question, findings);
  writeFile(options.out, page);
  const written: BoardInput = { name: options.out, ...sha256Of(page) };
  return {
    verb: 'report',
    inputs,
    ranged: { 'touchdown simulation': rangedStudy(asked) },
    results: {
      isPartial: false,
      written,
      least: findings.least,
      cells: findings.cells.map(({ world, slopeDeg, least, outside }) => ({
        world: world.id,
        slopeDeg,
        ...least,
        outside,
      })),
      sensitivities: sensitivityRows(findings.sensitivities).map(({ input, less, more }) => ({
        input: input.name,
        by: input.by,
        rule: input.rule,
        less: plainChange(less),
        more: plainChange(more),
      })),
      verdict: findings.summary.requirement?.verdict.kind ?? null,
      files: question.inputs,
    },
    text: [
      ...answerLines(question, findings),
      '',
      `Written to ${oneLine(written.name, 80)}: ${written.bytes} bytes, SHA-256 ${written.sha256}.`,
    ].join('\n'),
  };
}

/** Every name there is, null where there is no number. */
function plainChange({
  margin,
  upright,
}: {
  readonly margin: number | undefined;
  readonly upright: number | undefined;
}): {
  readonly margin: number | null;
  readonly upright: number | null;
} {
  return { margin: margin ?? null, upright: upright ?? null };
}
