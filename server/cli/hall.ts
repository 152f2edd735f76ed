import { Argument } from 'commander';
import { HALL, HALL_BUDGET, parseHallText, type Hall, type HallScene } from '../../levels/index.ts';
import { checkDocument, type DocumentKind } from './checkDocument.ts';
import type { DefineVerb } from './program.ts';
import { UsageError } from './usageError.ts';

const ACTIONS = ['list', 'check'] as const;
type Action = (typeof ACTIONS)[number];

export const defineHall: DefineVerb = (command, deliver) => {
  command
    .description(
      'The scenes for a hall that come with the program; or checks a file of scenes: says what is in it, or every problem with its line and field, with exit code 1. ' +
        'The form of such a file is levels/schemas/hall.schema.json. The page of the hall opens one with "Open scenes".',
    )
    .addArgument(new Argument('[action]', 'what to do').choices(ACTIONS).default('list'))
    .argument('[file]', 'the file of scenes to check')
    .addHelpText('after', '\nExamples:\n  kilter hall list\n  kilter hall check levels/hall/scenes.json')
    .action((action: Action, file: string | undefined) => {
      if ((file !== undefined) !== (action === 'check'))
        throw new UsageError('expected a file of scenes with check, and none with list');
      if (file !== undefined) deliver(checkDocument(file, HALL_FILE));
      else
        deliver({ verb: 'hall', inputs: { action: 'list' }, results: resultsOf(HALL), text: textOf(HALL).join('\n') });
    });
};

const HALL_FILE: DocumentKind<Hall> = {
  verb: 'hall',
  what: 'a file of scenes',
  budget: HALL_BUDGET,
  parse: parseHallText,
  resultsOf,
  textOf,
};

function resultsOf({ title, scenes }: Hall) {
  return { title, scenes: scenes.map(({ kind, question }) => ({ kind, question })) };
}

function textOf({ title, scenes }: Hall): readonly string[] {
  return [title, ...scenes.map((scene, i) => `  ${i + 1}  ${scene.question} (${contentOf(scene)})`)];
}

function contentOf(scene: HallScene): string {
  switch (scene.kind) {
    case 'film':
      return `film, ${scene.isVote ? 'with a vote, ' : ''}pace ${scene.pace}: ${scene.arrivals.map(({ name }) => name).join('; ')}`;
    case 'dial':
      return `dial, ${scene.lander.name}: ${scene.field} from ${scene.from} to ${scene.to} by ${scene.step} on ${scene.worlds.join(', ')}`;
    case 'flight':
      return `flight, ${Object.values(scene.descent).join(', ')}`;
  }
  return scene satisfies never;
}
