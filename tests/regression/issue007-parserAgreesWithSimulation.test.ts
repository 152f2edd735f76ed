/**
 * The parser took legs that soften once they are used up, and lumps in one line; the simulation refused them. A lander with next to no moment about
 * one axis made steps so short that one touchdown took 18 million.
 */
import { describe, expect, it } from 'vitest';
import { parseLander } from '../../engine/lander/index.ts';
import { prepareTouchdown } from '../../engine/touchdown/index.ts';
import { LANDER_FILES, numbersIn, spoiled } from '../support/landerFile.ts';

function codesOf(json: unknown): readonly string[] {
  const result = parseLander(json);
  return result.ok ? [] : result.error.map((problem) => problem.code);
}

describe('a lander that the parser takes', () => {
  it.each(Object.entries(LANDER_FILES))('[TD18] can be set down, any number of %s changed', (_, document) => {
    let taken = 0;
    for (const [path, value] of numbersIn(document)) {
      for (const factor of [0, 0.15, 0.5, 0.9, 1.1, 2, 7]) {
        const parsed = parseLander(spoiled(document, path, value * factor));
        if (!parsed.ok) continue;
        taken++;
        const prepared = prepareTouchdown(parsed.value);
        expect(prepared.ok ? [] : prepared.error, path.join('.')).toEqual([]);
      }
    }
    expect(taken).toBeGreaterThan(300);
  });

  it('[LA9] does not soften when a leg is used up', () => {
    const softer = spoiled(LANDER_FILES.trivet, ['legs', 'bottomedStiffness'], 400_000);
    expect(codesOf(softer)).toEqual(['lander/implausible-bottomed-stiffening']);
  });

  it('[LA9] has some moment of inertia about every axis', () => {
    const { parts, ...rest } = LANDER_FILES.trivet as { parts: readonly object[] };
    const shape = { kind: 'point' };
    const lumps = parts.map((part, i) => ({ ...part, center: [0, 0, 0.8 + 0.2 * i], shape }));
    expect(codesOf({ ...rest, parts: lumps, tanks: [] })).toContain('lander/no-moment');
  });
});
