import type { Sign, TargetedResponse } from '../../engine/drill/index.ts';
import { JUDGMENTS } from '../../engine/estimate/index.ts';
import {
  readChoice,
  readFields,
  readKind,
  readList,
  readNumber,
  readText,
  type ProblemList,
} from '../../engine/fieldReader.ts';
import { SOURCES } from '../../engine/sensors/index.ts';
import { NAMED_CAUSES, SEATS } from '../../engine/table/index.ts';
import { SENTENCES } from '../../engine/talk/index.ts';
import { COUNTS, RANGES, TEXTS } from './drillRanges.ts';

/** What somebody is expected to do after an inject, and how it is seen that it was done. */
export function readResponse(list: ProblemList, value: unknown, path: string): TargetedResponse | undefined {
  const fields = readFields(list, value, path, ['id', 'seat', 'text', 'within', 'seen']);
  const id = readText(list, fields?.id, `${path}.id`, TEXTS.id);
  const seat = readChoice(list, fields?.seat, `${path}.seat`, SEATS);
  const text = readText(list, fields?.text, `${path}.text`, TEXTS.sentence);
  const within = readNumber(list, fields?.within, `${path}.within`, RANGES.span);
  const seen = readSign(list, fields?.seen, `${path}.seen`);
  if (id === undefined || seat === undefined || text === undefined) return undefined;
  return within === undefined || seen === undefined ? undefined : { id, seat, text, within, seen };
}

/** Signs that say no more than what they are. */
const BARE = ['evaluator', 'poll', 'decision', 'abort', 'cutOff', 'lineShut', 'limit', 'spot', 'facing'] as const;
const SIGNS = ['callout', 'judgment', 'cause', ...BARE] as const;

function readSign(list: ProblemList, value: unknown, path: string): Sign | undefined {
  const by = readKind(list, value, path, SIGNS, 'by');
  switch (by) {
    case undefined:
      return undefined;
    case 'callout':
      return readCalloutSign(list, value, path);
    case 'judgment': {
      const fields = readFields(list, value, path, ['by', 'source', 'judgments']);
      const source = readChoice(list, fields?.source, `${path}.source`, SOURCES);
      const judgments = readList(list, fields?.judgments, `${path}.judgments`, COUNTS.judgments, (item, itemPath) =>
        readChoice(list, item, itemPath, JUDGMENTS),
      );
      return source === undefined || judgments === undefined ? undefined : { by, source, judgments };
    }
    case 'cause': {
      const fields = readFields(list, value, path, ['by', 'source', 'cause']);
      const source = readChoice(list, fields?.source, `${path}.source`, SOURCES);
      const cause = readChoice(list, fields?.cause, `${path}.cause`, NAMED_CAUSES);
      return source === undefined || cause === undefined ? undefined : { by, source, cause };
    }
    case 'evaluator':
    case 'poll':
    case 'decision':
    case 'abort':
    case 'cutOff':
    case 'lineShut':
    case 'limit':
    case 'spot':
    case 'facing':
      return readFields(list, value, path, ['by']) && { by };
  }
  return by satisfies never;
}

function readCalloutSign(list: ProblemList, value: unknown, path: string): Sign | undefined {
  const fields = readFields(list, value, path, ['by'], ['source', 'sentence']);
  const source = readChoice(list, fields?.source, `${path}.source`, SOURCES);
  const sentence = readChoice(list, fields?.sentence, `${path}.sentence`, SENTENCES);
  return (
    fields && { by: 'callout', ...(source !== undefined && { source }), ...(sentence !== undefined && { sentence }) }
  );
}
