import { describe, expect, it } from 'vitest';
import { limitLines } from '../../../server/log.ts';

describe('the lines of the log', () => {
  it('are few of each kind, and the next one says how many were left out', () => {
    const written: string[] = [];
    let nowMs = 0;
    const report = limitLines(
      (kind, line, omitted) => written.push(`${kind} ${line} ${omitted}`),
      () => nowMs,
    );
    for (let i = 0; i < 1000; i += 1) report('library', `line ${i}`);
    expect(written).toHaveLength(20);
    report('fault', 'of another kind');
    expect(written.at(-1)).toBe('fault of another kind 0');
    nowMs += 30_000;
    report('library', 'later');
    report('library', 'too soon');
    expect(written.at(-1)).toBe('library later 980');
    // a day of a flood
    for (let minute = 0; minute < 24 * 60; minute += 1) {
      nowMs += 60_000;
      for (let i = 0; i < 100; i += 1) report('library', 'flood');
    }
    expect(written.length).toBeLessThan(3000);
  });
});
