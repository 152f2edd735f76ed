import { describe, expect, it } from 'vitest';
import { codeOnly, projectFiles, readSource } from '../support/sources.ts';

/** Which names index which flat array of a kernel. */
const PREFIXES: Readonly<Record<string, string>> = {
  body: 'BODY_',
  feet: 'FOOT_',
  legsAsBuilt: 'FOOT_',
  hull: 'HULL_',
  hullForce: 'HULL_SUM_',
  run: 'RUN_',
  found: 'FOUND_',
  trial: 'TRIAL_',
  touch: 'TOUCH_',
};

const files = projectFiles().filter((file) => /^engine\/(touchdown|world)\/.*\.ts$/.test(file));
const uses = files.flatMap((file) =>
  [...codeOnly(readSource(file)).matchAll(/\b(\w+)!?\[([^\][]*)\]/g)].flatMap(([, array = '', index = '']) =>
    [...index.matchAll(/\b[A-Z][A-Z0-9]*_[A-Z0-9_]+\b/g)].map(([name]) => ({ file, array, name })),
  ),
);

describe('offsets into the flat arrays of the touchdown simulation', () => {
  it('are found at all, so that the rule below can fail', () => {
    expect(uses.filter(({ array }) => array === 'feet').length).toBeGreaterThan(50);
    expect(uses.filter(({ array }) => array === 'run').length).toBeGreaterThan(20);
  });

  it('each index the array whose name they bear', () => {
    const wrong = uses.filter(({ array, name }) => {
      const prefix = PREFIXES[array];
      return prefix !== undefined && !name.startsWith(prefix);
    });
    expect(wrong).toEqual([]);
  });
});
