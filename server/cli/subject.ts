import type { Command } from 'commander';
import type { Lander } from '../../engine/lander/index.ts';
import { addGeometryOptions, hasGeometry, type GeometryOptions } from './geometry.ts';
import { legNumbersParser } from './quantity.ts';
import { readLander } from './readLander.ts';
import { UsageError } from './usageError.ts';

export interface SubjectOptions extends GeometryOptions {
  readonly missing?: readonly number[];
}

/** What a verb is asked about: a lander, perhaps with legs gone, or plain geometry. */
export type Subject =
  | { readonly kind: 'lander'; readonly lander: Lander; readonly word: string; readonly missing: readonly number[] }
  | { readonly kind: 'geometry' };

export function addSubject(command: Command): Command {
  command.argument('[lander]', 'built-in lander (trivet, steeple, bolster) or the path of a lander file');
  return addGeometryOptions(command)
    .optionsGroup('Landing gear:')
    .option(
      '--missing <legs>',
      'numbers of legs that are gone, such as 2 or 1,3; legs count from 1 in the order of the file',
      legNumbersParser,
    );
}

export function readSubject(word: string | undefined, options: SubjectOptions): Subject {
  const plain = hasGeometry(options);
  if (word !== undefined && plain)
    throw new UsageError('expected either a lander or plain geometry (--half-stance and so on), got both');
  if (word === undefined && !plain)
    throw new UsageError(
      'expected a lander (a built-in name or a file) or plain geometry (--half-stance, --center-height, --mass, --inertia)',
    );
  if (word === undefined) {
    if (options.missing !== undefined) throw new UsageError('--missing goes with a lander; plain geometry has no legs');
    return { kind: 'geometry' };
  }
  const lander = readLander(word);
  const missing = options.missing ?? [];
  const absent = missing.find((number) => number > lander.legs.length);
  if (absent !== undefined)
    throw new UsageError(`--missing: ${lander.name} has ${lander.legs.length} legs, got ${absent}`);
  return { kind: 'lander', lander, word, missing };
}

/** Indices of the legs that are gone, as the engine counts them. */
export function missingIndices(missing: readonly number[]): readonly number[] {
  return missing.map((number) => number - 1);
}

/** 'Trivet', 'Trivet without leg 2', 'Trivet without legs 1, 3'. */
export function nameLander(lander: Lander, missing: readonly number[]): string {
  if (missing.length === 0) return lander.name;
  return `${lander.name} without leg${missing.length === 1 ? '' : 's'} ${missing.join(', ')}`;
}
