import { EVENT_KINDS, type EventRow } from '../../engine/drill/index.ts';
import { readChoice, readFields, readList, readText, type ProblemList } from '../../engine/fieldReader.ts';
import { COUNTS, TEXTS } from './drillRanges.ts';
import { readEffect } from './readEffect.ts';
import { readResponse } from './readResponse.ts';
import { readTrigger } from './readTrigger.ts';

const FIELDS = [
  'id',
  'title',
  'kind',
  'trigger',
  'effects',
  'visible',
  'groundTruth',
  'objective',
  'responses',
] as const;

/** A row of the event list. */
export function readEvent(list: ProblemList, value: unknown, path: string): EventRow | undefined {
  const fields = readFields(list, value, path, FIELDS, ['course', 'unless', 'note']);
  const id = readText(list, fields?.id, `${path}.id`, TEXTS.id);
  const title = readText(list, fields?.title, `${path}.title`, TEXTS.title);
  const kind = readChoice(list, fields?.kind, `${path}.kind`, EVENT_KINDS);
  const course = readText(list, fields?.course, `${path}.course`, TEXTS.id);
  const trigger = readTrigger(list, fields?.trigger, `${path}.trigger`);
  const unless = readText(list, fields?.unless, `${path}.unless`, TEXTS.id);
  const effects = readList(list, fields?.effects, `${path}.effects`, COUNTS.effects, (item, itemPath) =>
    readEffect(list, item, itemPath),
  );
  const visible = readText(list, fields?.visible, `${path}.visible`, TEXTS.sentence);
  const groundTruth = readText(list, fields?.groundTruth, `${path}.groundTruth`, TEXTS.sentence);
  const objective = readText(list, fields?.objective, `${path}.objective`, TEXTS.id);
  const responses = readList(list, fields?.responses, `${path}.responses`, COUNTS.responses, (item, itemPath) =>
    readResponse(list, item, itemPath),
  );
  const note = readText(list, fields?.note, `${path}.note`, TEXTS.paragraph);
  if (id === undefined || title === undefined || kind === undefined || trigger === undefined) return undefined;
  if (effects === undefined || visible === undefined || groundTruth === undefined) return undefined;
  if (objective === undefined || responses === undefined) return undefined;
  const told = { visible, groundTruth, objective, responses };
  const from = {
    ...(course !== undefined && { course }),
    trigger,
    ...(unless !== undefined && { unless }),
  };
  return { id, title, kind, ...from, effects, ...told, ...(note !== undefined && { note }) };
}
