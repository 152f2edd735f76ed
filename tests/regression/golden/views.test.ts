import { describe, expect, it } from 'vitest';
import { readGolden } from './readGolden.ts';
import { showAll, SHOWN_RUNS } from './views.ts';

const { views } = readGolden();

describe('all that is shown', () => {
  it.each(SHOWN_RUNS)('[RE13] comes out to the bit at each seat: $name', (run) => {
    const { hashes, done, refused, table } = showAll(run);
    // equal hashes of nothing would be worth nothing: it came down, and what people did was mostly taken
    expect(table.run.flight.outcome).toBe('upright');
    expect([done, refused]).toEqual(run.answers);
    expect(hashes).toEqual(views[run.name]);
  });
});
