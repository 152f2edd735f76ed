import { describe, expect, it } from 'vitest';
import { abridge, examplesOn, PAGES } from '../../support/readmeExamples.ts';
import { callKilter } from './runKilter.ts';

const EXAMPLES = PAGES.flatMap(examplesOn);

describe('the pages that show the command', () => {
  it('show every verb', () => {
    const verbs = examplesOn('server/cli/README.md').map(({ line }) => line.split(' ')[0]);
    expect(new Set(verbs)).toEqual(
      new Set(['stand', 'limit', 'stance', 'touchdown', 'envelope', 'disperse', 'compare', 'trade', 'worlds', 'check']),
    );
    expect(examplesOn('README.md').length).toBeGreaterThanOrEqual(4);
  });

  // our own output, as a page shows it; `node tests/contract/cli/writeReadme.ts` writes it anew
  it.each(EXAMPLES)('$page shows what is really printed: $line', async ({ line, shown }) => {
    const { status, out, err } = await callKilter(line.split(' '));
    expect({ status, err }).toEqual({ status: 0, err: '' });
    expect(shown).toBe(abridge(out, shown));
  });

  it('leave lines out only in the middle', () => {
    expect(abridge('a\nb\nc\nd\ne\n', 'a\n...\ne\n')).toBe('a\n...\ne\n');
    expect(abridge('a\nb\n', 'x\n')).toBe('a\nb\n');
  });
});
