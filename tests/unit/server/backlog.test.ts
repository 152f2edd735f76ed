import { describe, expect, it } from 'vitest';
import { createBacklogWatch } from '../../../server/lines/index.ts';

const KB = 1024;

describe('what waits to be read at the other end', () => {
  it('is let wait while it goes down again, however slowly a record of a megabyte goes out', () => {
    const isTooMuch = createBacklogWatch();
    expect(isTooMuch(1024 * KB, 0)).toBe(false);
    expect(isTooMuch(200 * KB, 9000)).toBe(false);
    expect(isTooMuch(60 * KB, 9900)).toBe(false);
    expect(isTooMuch(300 * KB, 15_000)).toBe(false);
    expect(isTooMuch(300 * KB, 24_000)).toBe(false);
  });

  it('is too much when more than a little has waited for ten seconds, or very much at once', () => {
    const isTooMuch = createBacklogWatch();
    expect(isTooMuch(65 * KB, 1000)).toBe(false);
    expect(isTooMuch(70 * KB, 11_000)).toBe(false);
    expect(isTooMuch(75 * KB, 11_001)).toBe(true);
    expect(createBacklogWatch()(5 * 1024 * KB, 0)).toBe(true);
  });
});
