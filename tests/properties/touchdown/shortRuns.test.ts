import { describe, expect, it } from 'vitest';
import { seedRandom } from '../../../engine/math/random.ts';
import { hasTipped, type TouchdownResult } from '../../../engine/touchdown/index.ts';
import { touchDown } from '../../support/touchDown.ts';
import { drawWildTouchdown } from '../../support/wildTouchdown.ts';

const RUNS = 150;

function isUsedUp({ limitsHit }: TouchdownResult): boolean {
  return limitsHit.includes('crush exhausted');
}

describe('a run that only asks for tipping and gear', () => {
  const random = seedRandom(5);
  const pairs = Array.from({ length: RUNS }, () => {
    const wild = drawWildTouchdown(random);
    return { whole: touchDown(wild), short: touchDown(wild, { only: 'tipping and gear' }) };
  });

  it('[TD23] says the same of both as a whole run, of wild landers', () => {
    expect(pairs.map(({ short }) => hasTipped(short))).toEqual(pairs.map(({ whole }) => hasTipped(whole)));
    const standing = pairs.filter(({ whole }) => !hasTipped(whole));
    expect(standing.map(({ short }) => isUsedUp(short))).toEqual(standing.map(({ whole }) => isUsedUp(whole)));
    expect(standing.filter(({ whole }) => isUsedUp(whole)).length).toBeGreaterThan(RUNS / 10);
  });

  it('[TD23] takes no more steps, and fewer in some', () => {
    expect(pairs.filter(({ whole, short }) => short.steps > whole.steps)).toEqual([]);
    expect(pairs.filter(({ whole, short }) => short.steps < whole.steps / 2).length).toBeGreaterThan(0);
  });
});
