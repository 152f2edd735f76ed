import { parseRecord, replayRecord, type Divergence } from '../../engine/record/index.ts';
import { playedModel } from '../../engine/table/index.ts';
import { TICK_RATE } from '../../engine/world/index.ts';
import { layPlan, parsePlanChoice } from '../../levels/index.ts';
import { accepted } from './problems.ts';
import type { DefineVerb } from './program.ts';
import { readFile } from './readFile.ts';
import type { Report } from './report.ts';
import { UsageError } from './usageError.ts';

/** As much as the parser of records takes. */
const RECORD_BUDGET = { mostBytes: 32 * 1024 * 1024, deepest: 8 };

export const defineReplay: DefineVerb = (command, deliver) => {
  command
    .description(
      'Plays the record of a table again and holds every mark in it against the table: says the first tick and field that differ, with exit code 1, ' +
        'or that none does.',
    )
    .argument('<file>', 'a record: JSON Lines, as `kilter descend --record` and a table write it')
    .addHelpText(
      'after',
      '\nExamples:\n  kilter descend --record .build/descent.jsonl\n  kilter replay .build/descent.jsonl',
    )
    .action((file: string) => {
      deliver(replay(file));
    });
};

function replay(file: string): Report {
  const text = readFile(file, 'a record', RECORD_BUDGET);
  if (text === undefined) throw new UsageError(`no file '${file}'`);
  const record = accepted(file, parseRecord(text));
  const { choice, drill, setupHash } = record.header.plan;
  const plan = accepted(file, layPlan(accepted(file, parsePlanChoice(choice)), drill));
  const replayed = replayRecord(record, { plan, model: playedModel });
  if (!replayed.ok)
    throw new UsageError(
      `'${file}': its plan is laid out otherwise now (${replayed.error.laidOut}, recorded ${setupHash})`,
    );
  const { table, marks, divergence } = replayed.value;
  const { tick, stage, descents } = table.state;
  const entries = record.lines.length - marks;
  const counts = `${entries} entries and ${marks} marks, ${descents} ${descents === 1 ? 'descent' : 'descents'}, ${(tick / TICK_RATE).toFixed(1)} s at the table, then ${ENDS[stage]}`;
  return {
    verb: 'replay',
    inputs: { file, choice },
    results: {
      ticks: tick,
      stage,
      descents,
      entries,
      marks,
      outcome: table.run.flight.outcome ?? null,
      divergence: divergence ?? null,
    },
    text: [`${plan.title}, seed ${plan.seed}`, counts, verdictOf(marks, divergence)].join('\n'),
    failed: divergence !== undefined || marks === 0,
  };
}

/** How a record ends, by the stage of its table. */
const ENDS = { gathering: 'gathering', descending: 'still descending', resolved: 'at rest' } as const;

function verdictOf(marks: number, divergence: Divergence | undefined): string {
  if (divergence !== undefined) return differs(divergence);
  return marks === 0 ? 'it holds no mark, so nothing could be checked' : 'every mark is as it was recorded';
}

function differs({ tick, field, recorded, replayed }: Divergence): string {
  return `first difference at tick ${tick}, ${field}: recorded ${recorded}, replayed ${replayed}`;
}
