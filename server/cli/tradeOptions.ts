import { InvalidArgumentError } from 'commander';
import { SHAPE_FIELDS, type ShapeField } from '../../engine/study/index.ts';
import { textParser } from './quantity.ts';

/** Dimensions of a lander by name, separated by commas, each once. */
export function fieldsParser(text: string, earlier: readonly ShapeField[] | undefined): readonly ShapeField[] {
  const words = textParser(text, earlier === undefined ? undefined : 'given').split(',');
  const fields = words.flatMap((word) => SHAPE_FIELDS.find((field) => field === word.trim()) ?? []);
  if (fields.length < words.length || new Set(fields).size < fields.length)
    throw new InvalidArgumentError(`Expected names out of ${SHAPE_FIELDS.join(', ')}, each once.`);
  return fields;
}
