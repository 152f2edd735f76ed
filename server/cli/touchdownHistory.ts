import { writeFileSync } from 'node:fs';
import { CAUTION } from '../../engine/constants.ts';
import type { TouchdownSample } from '../../engine/touchdown/index.ts';
import { formatCsv } from '../../engine/csv.ts';
import { oneLine, UsageError } from './usageError.ts';

/** Steps between the samples of a history. */
export const HISTORY_EVERY = 16;

/** Writes the samples of a touchdown, and what was asked for them, to a file that does not exist yet: JSON by its name, else CSV. */
export function writeHistory(
  file: string,
  samples: readonly TouchdownSample[],
  inputs: Readonly<Record<string, unknown>>,
): void {
  const text = file.toLowerCase().endsWith('.json')
    ? `${JSON.stringify({ schemaVersion: 1, caution: CAUTION, inputs, samples }, undefined, 1)}\n`
    : historyCsv(samples);
  try {
    writeFileSync(file, text, { flag: 'wx' });
  } catch (error) {
    const reason = error instanceof Error && 'code' in error ? String(error.code) : String(error);
    const why = reason === 'EEXIST' ? 'it exists already' : reason;
    throw new UsageError(`--history: '${oneLine(file, 80)}' cannot be written: ${why}`);
  }
}

function historyCsv(samples: readonly TouchdownSample[]): string {
  const legs = samples[0]?.strokes.length ?? 0;
  const numbered = (name: string): readonly string[] => Array.from({ length: legs }, (_, i) => `${name}${i + 1}`);
  const fixed = 'time,x,y,z,vx,vy,vz,qw,qx,qy,qz,rateX,rateY,rateZ,margin'.split(',');
  const names = [...fixed, ...numbered('stroke'), ...numbered('load')];
  const rows = samples.map((sample) => [
    sample.time,
    ...sample.position,
    ...sample.velocity,
    ...sample.attitude,
    ...sample.rates,
    sample.margin,
    ...sample.strokes,
    ...sample.loads,
  ]);
  return formatCsv({ names, rows });
}
