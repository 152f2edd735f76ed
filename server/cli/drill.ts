import { Argument } from 'commander';
import type { Drill } from '../../engine/drill/index.ts';
import { DRILL_BUDGET, DRILLS, findLander, findSite, parseDrillText } from '../../levels/index.ts';
import { checkDocument, type DocumentKind } from './checkDocument.ts';
import type { DefineVerb } from './program.ts';
import type { Report } from './report.ts';
import { textTable } from './textTable.ts';
import { UsageError } from './usageError.ts';

const ACTIONS = ['list', 'check'] as const;
type Action = (typeof ACTIONS)[number];

export const defineDrill: DefineVerb = (command, deliver) => {
  command
    .description(
      'The drills that come with the program; or checks a drill file: says what is in it, or every problem with its line and field, with exit code 1. ' +
        'The form of a drill file is levels/schemas/drill.schema.json. `kilter descend --drill` flies one.',
    )
    .addArgument(new Argument('[action]', 'what to do').choices(ACTIONS).default('list'))
    .argument('[file]', 'the drill file to check')
    .addHelpText(
      'after',
      '\nExamples:\n  kilter drill list\n  kilter drill check levels/drills/quietAltimeter.json\n  kilter descend --drill quiet-altimeter --seed 3',
    )
    .action((action: Action, file: string | undefined) => {
      if ((file !== undefined) !== (action === 'check'))
        throw new UsageError('expected a drill file with check, and none with list');
      deliver(file === undefined ? listDrills() : checkDocument(file, DRILL_FILE));
    });
};

const COLUMNS = [
  { heading: 'drill', align: 'left' },
  { heading: 'level', align: 'right' },
  { heading: 'minutes', align: 'right' },
  { heading: 'lander', align: 'left' },
  { heading: 'site', align: 'left' },
  { heading: 'title', align: 'left' },
] as const;

function listDrills(): Report {
  const rows = DRILLS.map(({ id, level, minutes, plan, title }) => [
    id,
    String(level),
    String(minutes),
    findLander(plan.lander)?.name ?? plan.lander,
    findSite(plan.site)?.name ?? plan.site,
    title,
  ]);
  const drills = DRILLS.map(({ id, title, summary, level, minutes, plan }) => ({
    id,
    title,
    summary,
    level,
    minutes,
    plan,
  }));
  return { verb: 'drill', inputs: { action: 'list' }, results: { drills }, text: textTable(COLUMNS, rows) };
}

const DRILL_FILE: DocumentKind<Drill> = {
  verb: 'drill',
  what: 'a drill',
  budget: DRILL_BUDGET,
  parse: parseDrillText,
  resultsOf: ({ id }) => ({ id }),
  textOf: contentsOf,
};

/** What a reader wants to see before flying it. */
function contentsOf({ id, title, level, minutes, plan, objectives, ruleCard, courses, events }: Drill): string[] {
  const responses = events.reduce((sum, row) => sum + row.responses.length, 0);
  const seen = events.flatMap((row) => row.responses).filter(({ seen: { by } }) => by !== 'evaluator').length;
  const ways = courses.length === 0 ? '' : `; the seed picks one course of ${courses.length}: ${courses.join(', ')}`;
  return [
    `${title} (${id}): level ${level}, ${minutes} min`,
    `${plan.lander} over ${plan.site} on ${plan.world}, from the ${plan.start} start, ${plan.mode}, pace ${plan.pace}, seed ${plan.seed}`,
    `${objectives.length} objectives, ${ruleCard.length} rules, ${events.length} injects${ways}`,
    `${responses} responses, of which the table sees ${seen} and the evaluator says the rest`,
    ...events.map((row) => `  ${row.id}: ${row.kind}, ${whenOf(row)}`),
  ];
}

function whenOf({ trigger }: Drill['events'][number]): string {
  switch (trigger.on) {
    case 'time':
      return `${trigger.seconds} s after the start`;
    case 'height':
      return `at ${trigger.meters} m`;
    case 'state':
      return `${trigger.quantity} ${'above' in trigger ? `above ${trigger.above}` : `below ${trigger.below}`}`;
    case 'inject':
      return `${trigger.seconds} s after ${trigger.inject}`;
    case 'hand':
      return 'by hand';
  }
  return trigger satisfies never;
}
