import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { showAll, SHOWN_RUNS, type ShownHashes } from './goldenViews.ts';

/**
 * THE HASHES ARE OUR OWN OUTPUT. They check nothing but that nothing of what is shown changed unnoticed: where it changes on purpose they are written anew
 * (`node tests/regression/table/writeGoldenViews.ts`), in a commit that says why. Which seat's hash differs says whose display it is.
 */
const GOLDEN: Readonly<Record<string, ShownHashes>> = JSON.parse(
  readFileSync(new URL('goldenViews.json', import.meta.url), 'utf8'),
);

describe('all that is shown', () => {
  it.each(SHOWN_RUNS)('[RE13] comes out to the bit at each seat: $name', (run) => {
    const { hashes, done, refused, table } = showAll(run);
    // equal hashes of nothing would be worth nothing: it came down, and what people did was mostly taken
    expect(table.run.flight.outcome).toBe('upright');
    expect([done, refused]).toEqual(run.answers);
    expect(hashes).toEqual(GOLDEN[run.name]);
  });
});
