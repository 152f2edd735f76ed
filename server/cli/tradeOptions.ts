import { InvalidArgumentError } from 'commander';
import { SENSITIVITY_NAMES, SHAPE_FIELDS, type SensitivityName, type ShapeField } from '../../engine/study/index.ts';
import { textParser } from './quantity.ts';

/** Dimensions of a lander by name, separated by commas, each once. */
export function fieldsParser(text: string, earlier: readonly ShapeField[] | undefined): readonly ShapeField[] {
  return namesOutOf(SHAPE_FIELDS, textParser(text, earlier === undefined ? undefined : 'given'));
}

/** Inputs to change a little, by name, each once; 'none' is none of them. */
export function sensitivitiesParser(
  text: string,
  earlier: readonly SensitivityName[] | undefined,
): readonly SensitivityName[] {
  const words = textParser(text, earlier === undefined ? undefined : 'given');
  return words === 'none' ? [] : namesOutOf(SENSITIVITY_NAMES, words);
}

function namesOutOf<Name extends string>(known: readonly Name[], text: string): readonly Name[] {
  const words = text.split(',');
  const names = words.flatMap((word) => known.find((name) => name === word.trim()) ?? []);
  if (names.length < words.length || new Set(names).size < names.length)
    throw new InvalidArgumentError(`Expected names out of ${known.join(', ')}, each once.`);
  return names;
}
