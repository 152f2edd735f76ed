import { ALERT_LEVELS, DISPLAYS, type Effect, type NamedFault } from '../../engine/drill/index.ts';
import { readUndatedFault } from '../../engine/faults/index.ts';
import {
  readChoice,
  readFields,
  readKind,
  readList,
  readNumber,
  readText,
  type ProblemList,
} from '../../engine/fieldReader.ts';
import { COUNTS, RANGES, TEXTS } from './drillRanges.ts';

const EFFECTS = ['fail', 'mend', 'tell'] as const;

/** What an inject does. */
export function readEffect(list: ProblemList, value: unknown, path: string): Effect | undefined {
  const does = readKind(list, value, path, EFFECTS, 'do');
  switch (does) {
    case undefined:
      return undefined;
    case 'fail': {
      const fields = readFields(list, value, path, ['do', 'name', 'fault'], ['seconds']);
      const named = readNamed(list, fields, path);
      const seconds = readNumber(list, fields?.seconds, `${path}.seconds`, RANGES.span);
      return named && { do: does, ...named, ...(seconds !== undefined && { seconds }) };
    }
    case 'mend': {
      const fields = readFields(list, value, path, ['do', 'name'], ['seconds']);
      const name = readText(list, fields?.name, `${path}.name`, TEXTS.id);
      const seconds = readNumber(list, fields?.seconds, `${path}.seconds`, RANGES.span);
      return name === undefined ? undefined : { do: does, name, ...(seconds !== undefined && { seconds }) };
    }
    case 'tell':
      return readTelling(list, value, path);
  }
  return does satisfies never;
}

function readTelling(list: ProblemList, value: unknown, path: string): Effect | undefined {
  const fields = readFields(list, value, path, ['do', 'text', 'to'], ['level']);
  const text = readText(list, fields?.text, `${path}.text`, TEXTS.sentence);
  const to = readList(list, fields?.to, `${path}.to`, COUNTS.displays, (item, itemPath) =>
    readChoice(list, item, itemPath, DISPLAYS),
  );
  const level = readChoice(list, fields?.level, `${path}.level`, ALERT_LEVELS);
  if (text === undefined || to === undefined) return undefined;
  return { do: 'tell', text, to, ...(level !== undefined && { level }) };
}

/** Something that fails, by the name that a later effect can mend. */
export function readNamedFault(list: ProblemList, value: unknown, path: string): NamedFault | undefined {
  return readNamed(list, readFields(list, value, path, ['name', 'fault']), path);
}

function readNamed(
  list: ProblemList,
  fields: { readonly name?: unknown; readonly fault?: unknown } | undefined,
  path: string,
): NamedFault | undefined {
  const name = readText(list, fields?.name, `${path}.name`, TEXTS.id);
  const fault = readUndatedFault(list, fields?.fault, `${path}.fault`);
  return name === undefined || fault === undefined ? undefined : { name, fault };
}
