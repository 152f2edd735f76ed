import type { AbortSign, Rule } from '../../engine/drill/index.ts';
import { readFields, readKind, readNumber, readText, type ProblemList } from '../../engine/fieldReader.ts';
import { RANGES, TEXTS } from './drillRanges.ts';

const SIGNS = ['heightUnsure', 'noSpot'] as const;

/** A rule of the card; some say when to abort so that a stand-in can keep them. */
export function readRule(list: ProblemList, value: unknown, path: string): Rule | undefined {
  const fields = readFields(list, value, path, ['id', 'text'], ['abort']);
  const id = readText(list, fields?.id, `${path}.id`, TEXTS.id);
  const text = readText(list, fields?.text, `${path}.text`, TEXTS.sentence);
  const abort = fields?.abort === undefined ? undefined : readSign(list, fields.abort, `${path}.abort`);
  return id === undefined || text === undefined ? undefined : { id, text, ...(abort && { abort }) };
}

function readSign(list: ProblemList, value: unknown, path: string): AbortSign | undefined {
  const when = readKind(list, value, path, SIGNS, 'when');
  if (when === undefined) return undefined;
  const isUnsure = when === 'heightUnsure';
  const fields = readFields(list, value, path, isUnsure ? ['when', 'below', 'over'] : ['when', 'below']);
  const below = readNumber(list, fields?.below, `${path}.below`, RANGES.meters);
  if (!isUnsure) return below === undefined ? undefined : { when, below };
  const over = readNumber(list, fields?.over, `${path}.over`, RANGES.meters);
  return below === undefined || over === undefined ? undefined : { when, below, over };
}
